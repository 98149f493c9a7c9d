import type { Schemas } from '../api/client.js';
import { leftKind } from '../words/words.js';

interface LeftListProps {
  left: readonly Schemas['LeftLine'][];
  /** True where all of it belongs to the item shown. */
  own?: boolean;
}

/** What was altered on the aircraft and must be undone: what, where, under which number, how. */
export function LeftList({ left, own = false }: LeftListProps) {
  if (left.length === 0) return <p>Nothing is left on the aircraft.</p>;
  return (
    <ul class="plain-list left">
      {left.map(({ id, kind, where, tag, undo, defect, defectNumber, owner }) => (
        <li key={id}>
          <span class="strong">
            {leftKind(kind)}
            {tag && `, ${tag}`}
          </span>
          <span class="block">{where}</span>
          <span class="soft block">
            {undo}
            {defect === null && !own && ` · For ${owner}`}
            {defect && !own && (
              <>
                {' · '}
                <a href={`/defects/${defect}`}>{defectNumber ?? 'its item'}</a>
              </>
            )}
          </span>
        </li>
      ))}
    </ul>
  );
}
