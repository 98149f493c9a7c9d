import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';
import { leftKind } from '../words/words.js';

type Line = Schemas['RegisterLine'];

/** Lines of the register: what, where, for whom, by whom, and how it is undone. */
export function RegisterList({ lines }: { lines: readonly Line[] }) {
  const { operator } = useSession();
  return (
    <ul class="plain-list left">
      {lines.map((line) => (
        <li key={line.id}>
          <span class="strong">
            {leftKind(line.kind)}
            {line.tag && `, ${line.tag}`}
          </span>
          <span class="block">{line.where}</span>
          <span class="block">
            <Owner line={line} />
          </span>
          <span class="soft block">To undo: {line.undo}</span>
          <span class="soft block">
            By {line.fittedBy}, {withOffset(line.fittedAt, operator.base)}
            {line.under && `, ${line.under}`}
            {line.removedBy && line.removedAt && (
              <>
                {' · '}Undone by {line.removedBy}, {withOffset(line.removedAt, operator.base)}
                {' · '}
                {line.verifiedBy ? `seen by ${line.verifiedBy}` : 'not seen by another person yet'}
              </>
            )}
          </span>
        </li>
      ))}
    </ul>
  );
}

function Owner({ line: { owner, ownerKind, ownerUntil, defect, alsoFor } }: { line: Line }) {
  const { operator } = useSession();
  if (ownerKind === null) return <span class="strong">Nobody owns it.</span>;
  return (
    <>
      For {defect === null ? owner : <a href={`/defects/${defect}`}>{owner}</a>}
      {ownerUntil && `, until ${withOffset(ownerUntil, operator.base)}`}
      {alsoFor.map(({ defect: other, number }) => (
        <>
          {' '}
          and for <a href={`/defects/${other}`}>{number}</a>
        </>
      ))}
    </>
  );
}
