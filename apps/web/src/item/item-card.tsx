import type { Schemas } from '../api/client.js';
import { counted, itemName } from '../words/words.js';
import { DeadlineWords } from './deadline-words.js';
import { StateWords } from './state-words.js';

/** One open item in a list: what, how it stands, until when, and what is owed on it. */
export function ItemCard({ item }: { item: Schemas['DefectLine'] }) {
  const owed = owedNow(item);
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

/** Procedures never signed, and a placard not fitted. What is owed anew before a flight only its answer tells. */
export function owedNow({ work, placard }: Schemas['DefectLine']): number {
  const placards = placard && !placard.fitted ? 1 : 0;
  return work.filter(({ signed }) => signed === null).length + placards;
}
