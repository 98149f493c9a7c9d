import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useQuestion } from '../api/use-read.js';
import { type How, proofOf, Prove, waysOf } from '../session/prove.js';
import { useSession } from '../session/session.js';
import { ProblemBox } from '../shell/problem-box.js';
import { Read } from '../shell/reading.js';

type Preview = Schemas['SettingsPreview'];

interface SettleFormProps {
  changes: readonly object[];
  /** ETag of the settings as they were read. */
  seen: string | null;
}

/** What would read otherwise, and the signature under it where something open would. */
export function SettleForm({ changes, seen }: SettleFormProps) {
  const preview = useQuestion<Preview>('/settings/preview', { changes });
  return (
    <Read of={preview}>
      {(read) =>
        read.changes.length === 0 ? (
          <p>Nothing would change: every value is as it stands.</p>
        ) : (
          <Settle preview={read} changes={changes} seen={seen} />
        )
      }
    </Read>
  );
}

function Settle({ preview, changes, seen }: SettleFormProps & { preview: Preview }) {
  const { means } = useSession();
  const { route } = useLocation();
  const [secret, setSecret] = useState('');
  const [how, setHow] = useState<How>(waysOf(means)[0] ?? 'secret');
  const { send, sending, problem } = useAct();
  const { statement } = preview;

  async function settle(event: Event): Promise<void> {
    event.preventDefault();
    const answer = await send(async () => {
      const sign = statement === null ? {} : { sign: await proofOf(how, secret, statement) };
      return { method: 'PUT', path: '/settings', body: { changes, ...sign }, seen };
    });
    if (answer) route('/settings');
  }

  return (
    <form onSubmit={settle}>
      <h2>What would read otherwise</h2>
      <ul>
        {preview.changes.map(({ key, title, before, after }) => (
          <li key={key}>
            {title}: <strong>{after}</strong>, was {before}
          </li>
        ))}
      </ul>
      {preview.effects.length === 0 ? (
        <p>No open deadline, extension or answer reads otherwise.</p>
      ) : (
        <ul>
          {preview.effects.map(({ about, of, before, after }) => (
            <li key={`${about} ${of}`}>
              {of}: {after}
              <span class="soft block">now: {before}</span>
            </li>
          ))}
        </ul>
      )}
      {statement !== null && (
        <section class="signing" aria-label="You certify">
          <blockquote>{statement}</blockquote>
          <Prove means={means} how={how} onHow={setHow} secret={secret} onSecret={setSecret} />
        </section>
      )}
      <ProblemBox problem={problem} />
      <div class="buttons">
        <button class="main" disabled={sending}>
          {statement === null ? 'Settle it' : 'Sign and settle it'}
        </button>
      </div>
    </form>
  );
}
