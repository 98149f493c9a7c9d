import type { ComponentChildren } from 'preact';
import type { Schemas } from '../api/client.js';
import type { ActFormProps } from './act-form-props.js';
import { SignForm } from './sign-form.js';

interface SignedActProps extends ActFormProps {
  /** Last part of the address of the act. */
  address: string;
  /** Name of the act as the statement is asked for; absent: the address. */
  act?: string;
  /** What else the statement is asked for. */
  query?: Record<string, string>;
  body(): object;
  button: string;
  /** Said on the item's page afterwards. */
  said: string;
  children?: ComponentChildren;
}

/** A signed act on an item, by its address. */
export function SignedAct({ view, address, act = address, query = {}, seen, said, done, ...rest }: SignedActProps) {
  const { id } = view.defect;
  return (
    <SignForm<Schemas['ActDone']>
      statementPath={`/defects/${id}/statement?${new URLSearchParams({ act, ...query }).toString()}`}
      path={`/defects/${id}/${address}`}
      seen={seen}
      done={() => done(said)}
      {...rest}
    />
  );
}
