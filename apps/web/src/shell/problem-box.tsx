import { useContext } from 'preact/hooks';
import { DONE_BEFORE, type FieldError, type Problem } from '../api/problem.js';
import { SessionContext } from '../session/session.js';
import { readable } from '../words/readable.js';
import { pointerWords } from '../words/words.js';

interface ProblemBoxProps {
  problem: Problem | null;
  /** Reads the thing again and keeps what was typed. */
  readAgain?: () => void;
}

/** Why something was refused, and what to do next. It is announced, and stands beside what was sent. */
export function ProblemBox({ problem, readAgain }: ProblemBoxProps) {
  return (
    <div role="alert" class={problem ? 'problem' : undefined}>
      {problem && <Content problem={problem} readAgain={readAgain} />}
    </div>
  );
}

function Content({ problem, readAgain }: { problem: Problem; readAgain: (() => void) | undefined }) {
  const { title, detail, errors, code, status, paragraph } = problem;
  const zone = useContext(SessionContext)?.operator.base ?? 'UTC';
  const again = readAgain && (['changed-meanwhile', 'statement-not-shown'].includes(code) || status === 0);
  return (
    <>
      <p class="strong">{readable(title, zone)}</p>
      {errors.length > 0 ? (
        <ul>
          {errors.map((error) => (
            <li key={error.pointer + error.reason}>
              {placeWords(error)}
              {error.reason}
            </li>
          ))}
        </ul>
      ) : (
        detail !== '' && detail !== title && <p>{readable(detail, zone)}</p>
      )}
      <p>
        <strong>What to do:</strong> {nextOf(problem)}
      </p>
      {paragraph !== '' && <p class="soft">{paragraph}</p>}
      {status === 401 && code === 'not-signed-in' && (
        <p>
          <a href="/" target="_blank" rel="noopener">
            Sign in in another tab
          </a>
          ; what you typed stays here.
        </p>
      )}
      {again && (
        <button type="button" onClick={readAgain}>
          Read it again
        </button>
      )}
    </>
  );
}

/** Pointers to all that was sent: to name them says nothing more. */
const WHOLE = ['/row', '/text'];

/** "card filter, step seals: text: " */
function placeWords({ pointer, entry, card, step }: FieldError): string {
  const inFile = [entry && `entry ${entry}`, card && `card ${card}`, step && `step ${step}`]
    .filter(Boolean)
    .join(', ');
  const field = `${pointerWords(pointer)}: `;
  if (inFile !== '') return pointer === '/row' ? `${inFile}: ` : `${inFile}: ${field}`;
  return WHOLE.includes(pointer) ? '' : field;
}

function nextOf({ code, next }: Problem): string {
  if (code !== DONE_BEFORE) return next;
  return 'What you sent before arrived after all and was done. Open the item again and look before you send more.';
}
