import { useLocation } from 'preact-iso';
import { useAct } from '../api/use-act.js';
import { Page } from '../shell/page.js';
import { ProblemBox } from '../shell/problem-box.js';
import { roleWords } from '../words/words.js';
import type { SessionView } from './session.js';

interface OperatorPageProps {
  session: Pick<SessionView, 'person' | 'operators'>;
  current: string | null;
  chosen(): Promise<void>;
}

/** Somebody who works for several operators works for one at a time. */
export function OperatorPage({ session, current, chosen }: OperatorPageProps) {
  const { send, sending, problem } = useAct();
  const { route } = useLocation();

  async function choose(operator: string): Promise<void> {
    if (operator !== current) {
      const answer = await send({ method: 'PUT', path: '/session/operator', body: { operator } });
      if (!answer) return;
      await chosen();
    }
    route('/');
  }

  return (
    <Page title="For which operator?" aside={session.person.name}>
      <p>You work for one operator at a time. Everything you see and sign belongs to that one.</p>
      <ProblemBox problem={problem} />
      <ul class="plain-list cards">
        {session.operators.map(({ id, name, code, roles }) => (
          <li key={id}>
            <button class="big" disabled={sending} onClick={() => void choose(id)}>
              <span class="strong">{name}</span> {code}
              <span class="soft block">
                as {roles.map(roleWords).join(', ')}
                {id === current ? ' · chosen now' : ''}
              </span>
            </button>
          </li>
        ))}
      </ul>
      {session.operators.length === 0 && (
        <p class="strong">No operator has you as a member now. Ask an administrator.</p>
      )}
    </Page>
  );
}
