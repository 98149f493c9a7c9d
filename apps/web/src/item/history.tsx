import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';
import { methodWords, roleWords } from '../words/words.js';

type Line = Schemas['HistoryLine'];

/** Everything that happened to an item, in order: what, by whom with which licence, for whom, and when. */
export function History({ history }: { history: readonly Line[] }) {
  return (
    <ol class="history">
      {history.map((line) => (
        <li key={line.seq}>
          <p class="strong">
            <Struck line={line} />
          </p>
          <Corrections line={line} />
          <By line={line} />
          <Times line={line} />
          {line.statement && (
            <details>
              <summary>What was certified</summary>
              <blockquote>{line.statement}</blockquote>
            </details>
          )}
        </li>
      ))}
    </ol>
  );
}

/** What was corrected since is struck where it stands. */
function Struck({ line: { words, corrections } }: { line: Line }) {
  const was = corrections.find((one) => one.was !== null && words.includes(one.was))?.was;
  if (was === undefined || was === null) return <>{words}</>;
  const at = words.indexOf(was);
  return (
    <>
      {words.slice(0, at)}
      <s>{was}</s>
      {words.slice(at + was.length)}
    </>
  );
}

function Corrections({ line: { corrections } }: { line: Line }) {
  const { operator } = useSession();
  return (
    <>
      {corrections.map(({ field, was, now, by, at }) => (
        <p key={at + field}>
          Corrected, {field}: <s>{was ?? 'nothing'}</s> <ins>{now}</ins>{' '}
          <span class="soft">
            by {by}, {withOffset(at, operator.base)}
          </span>
        </p>
      ))}
    </>
  );
}

function By({ line: { by, role, licence, authorisation, organisation, method } }: { line: Line }) {
  return (
    <p>
      {by}, {roleWords(role)}, {organisation}
      {licence && `, licence ${licence}`}
      {authorisation && `, authorisation ${authorisation}`}
      {method && `, ${methodWords(method)}`}
    </p>
  );
}

function Times({ line: { occurredAt, recordedAt, enteredAt, sealedAs } }: { line: Line }) {
  const { operator } = useSession();
  const { base } = operator;
  const recorded = withOffset(recordedAt, base);
  const entered = withOffset(enteredAt, base);
  return (
    <p class="soft">
      {occurredAt && <span class="block">Happened {withOffset(occurredAt, base)}</span>}
      {recorded !== entered && <span class="block">In the log {recorded}</span>}
      <span class="block">Entered here {entered}</span>
      <span class="block">
        {sealedAs === null ? 'Not sealed yet in the record' : `Sealed in the record as number ${sealedAs}`}
      </span>
    </p>
  );
}
