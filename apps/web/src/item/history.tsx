import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';
import { methodWords, roleWords } from '../words/words.js';
import { CorrectionLine } from './correction-line.js';
import { struckPieces } from './struck.js';

type Line = Schemas['HistoryLine'];

/** Everything that happened to an item, in order: what, by whom with which licence, for whom, and when. */
export function History({ history, defect }: { history: readonly Line[]; defect: string }) {
  return (
    <ol class="history">
      {history.map((line) => (
        <li key={line.seq}>
          <p class="strong">
            <Struck line={line} />
          </p>
          {line.corrections.map((one) => (
            <CorrectionLine key={`${one.at}${one.field}`} line={one} />
          ))}
          <By line={line} />
          <Times line={line} />
          {line.statement && (
            <details>
              <summary>What was certified</summary>
              <blockquote>{line.statement}</blockquote>
            </details>
          )}
          {line.correctable.length + line.otherwise.length > 0 && (
            <p>
              <a
                href={`/defects/${defect}/correction?of=${line.id}`}
                aria-label={`Correct this entry, number ${line.seq}`}
              >
                Correct this entry
              </a>
            </p>
          )}
        </li>
      ))}
    </ol>
  );
}

/** What was corrected since is struck where it stands. */
function Struck({ line: { words, corrections } }: { line: Line }) {
  const pieces = struckPieces(
    words,
    corrections.map(({ struck }) => struck),
  );
  return <>{pieces.map(({ text, struck }) => (struck ? <s key={text}>{text}</s> : text))}</>;
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
