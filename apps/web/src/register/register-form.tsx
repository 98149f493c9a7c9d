import type { ComponentChildren } from 'preact';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';

/** What every form of an act on the register gets. */
export interface RegisterFormProps {
  view: Schemas['RegisterView'];
  /** ETag of the register as it was read. */
  seen: string | null;
  query: Record<string, string | undefined>;
  done(title: string): void;
  readAgain(): void;
}

interface RegisterActProps extends Omit<RegisterFormProps, 'query'> {
  /** Last part of the address of the act. */
  address: string;
  /** Name of the act as its statement is asked for. */
  act: string;
  /** The correction that it ends; null until one is chosen, absent where it ends none. */
  asked?: string | null;
  body(): object;
  button: string;
  said: string;
  children?: ComponentChildren;
}

/** A signed act on the register of an aircraft. */
export function RegisterAct({ view, address, act, asked, said, done, ...rest }: RegisterActProps) {
  const at = `/aircraft/${view.aircraft}/left`;
  return (
    <SignForm<Schemas['RegisterDone']>
      statementPath={asked === null ? null : `${at}/statement?act=${act}${asked ? `&asked=${asked}` : ''}`}
      path={`${at}/${address}`}
      done={() => done(said)}
      {...rest}
    />
  );
}
