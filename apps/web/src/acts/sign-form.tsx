import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { type How, proofOf, Prove, waysOf } from '../session/prove.js';
import { useSession } from '../session/session.js';
import { FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { roleWords } from '../words/words.js';

interface SignFormProps<T> {
  /** Where the statement to be certified is read, below /api; null until it is known what is to be signed. */
  statementPath: string | null;
  /** Where the act is sent. */
  path: string;
  /** PUT where a version is put in place of another. */
  method?: 'POST' | 'PUT';
  /** ETag of the item as it was read; absent where none is asked for. */
  seen?: string | null;
  /** What is sent beside the signature. */
  body(): object;
  button: string;
  done(answer: T): void;
  /** Reads the item again when somebody changed it meanwhile. */
  readAgain?: () => void;
  /** Takes the focus when it appears in place of what was pressed. */
  takesFocus?: boolean;
  children?: ComponentChildren;
}

/**
 * One signed act: what is certified is shown, and the signer proved anew for each signature. A secret lives in this form
 * only, and is forgotten when the act is done; a browser is asked not to fill it in.
 */
export function SignForm<T>(props: SignFormProps<T>) {
  const { statementPath, path, method = 'POST', seen, body, button, done, readAgain, takesFocus, children } = props;
  const statement = useRead<Schemas['Statement']>(statementPath);
  const { means } = useSession();
  const [secret, setSecret] = useState('');
  const [how, setHow] = useState<How>(waysOf(means)[0] ?? 'secret');
  const { send, sending, problem } = useAct();
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (takesFocus) form.current?.querySelector<HTMLElement>('h2')?.focus();
  }, [takesFocus]);
  useEffect(() => {
    if (problem?.code === 'secret-wrong') form.current?.querySelector<HTMLInputElement>('[type=password]')?.select();
  }, [problem]);

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    if (!statement.value) return;
    const shown = statement.value.statement;
    const answer = await send<T>(async () => {
      const sign = await proofOf(how, secret, shown);
      return { method, path, body: { ...body(), sign }, seen: seen ?? null };
    });
    if (!answer) return;
    setSecret('');
    done(answer.body);
  }

  function again(): void {
    void statement.readAgain();
    readAgain?.();
  }

  return (
    <form ref={form} onSubmit={submit}>
      <FieldErrors.Provider value={problem?.errors ?? []}>
        {children}
        {statementPath !== null && (
          <Signing statement={statement.value?.statement ?? null}>
            <Prove means={means} how={how} onHow={setHow} secret={secret} onSecret={setSecret} />
          </Signing>
        )}
      </FieldErrors.Provider>
      {statementPath === null && <p class="hint">Fill in what is asked above; the statement to sign appears then.</p>}
      <ProblemBox problem={problem ?? statement.problem} readAgain={again} />
      <div class="buttons">
        <button class="main" disabled={sending || statement.value === null}>
          {sending ? 'Signing…' : button}
        </button>
      </div>
    </form>
  );
}

interface SigningProps {
  statement: string | null;
  children: ComponentChildren;
}

function Signing({ statement, children }: SigningProps) {
  const { person, operator, roles } = useSession();
  const id = useId();
  return (
    <section class="signing" aria-labelledby={id}>
      <h2 id={id} tabIndex={-1}>
        You certify
      </h2>
      <blockquote>{statement ?? 'Reading what you certify…'}</blockquote>
      <p class="soft">
        {person.name}, {roles.map(roleWords).join(', ')}, for {operator.name}
      </p>
      {children}
    </section>
  );
}
