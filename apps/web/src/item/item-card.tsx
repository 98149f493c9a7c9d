import type { Schemas } from '../api/client.js';
import { counted, itemName } from '../words/words.js';
import { neverSigned } from './work-address.js';
import { DeadlineWords } from './deadline-words.js';
import { StateWords } from './state-words.js';

/** One open item in a list: what, how it stands, until when, and what is owed on it. */
export function ItemCard({ item }: { item: Schemas['DefectLine'] }) {
  const owed = neverSigned(item).length;
  return (
    <a class="big" href={`/defects/${item.id}`}>
      <span class="strong">{itemName(item)}</span> <span class="soft">{item.number}</span>
      <span class="block">
        <StateWords state={item.state} />
        {item.basis && <span class="soft"> {item.basis}</span>}
      </span>
      {item.deadline && (
        <span class="block">
          <DeadlineWords deadline={item.deadline} />
        </span>
      )}
      {owed > 0 && <span class="block">{counted(owed, 'signature', 'signatures', '')} owed</span>}
    </a>
  );
}
