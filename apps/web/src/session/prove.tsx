import { Choice, Field } from '../shell/fields.js';
import { freshSignOn } from './fresh-sign-on.js';
import { passkeyFor, passkeysHere } from './passkey.js';
import type { SessionView } from './session.js';

/** By what the signer proves to be that person. */
export type How = 'secret' | 'passkey' | 'signOn';

type Means = SessionView['means'];

/** What this person holds, what comes first being taken unless another is chosen. */
export function waysOf({ secret, passkey, signOn }: Means): How[] {
  const held: Record<How, boolean> = { secret, passkey: passkey && passkeysHere(), signOn: signOn !== null };
  return (['secret', 'passkey', 'signOn'] as const).filter((how) => held[how]);
}

/** The proof that is sent with a statement: the secret, or what the browser or the sign-on gave for it. Throws Problem. */
export async function proofOf(how: How, secret: string, statement: string): Promise<object> {
  if (how === 'passkey') return { passkey: await passkeyFor('/passkeys/signature', { statement }), statement };
  if (how === 'signOn') return { signedOn: await freshSignOn(statement), statement };
  return { secret, statement };
}

interface ProveProps {
  means: Means;
  how: How;
  onHow(how: How): void;
  secret: string;
  onSecret(secret: string): void;
}

/** Asks for the secret, or which of several ways to take. */
export function Prove({ means, how, onHow, secret, onSecret }: ProveProps) {
  const ways = waysOf(means);
  const words: Record<How, string> = {
    secret: 'my secret',
    passkey: 'a passkey',
    signOn: `a fresh sign-on: ${means.signOn ?? ''}`,
  };
  return (
    <>
      {ways.length > 1 && (
        <Choice
          legend="Sign with"
          options={ways.map((value) => ({ value, text: words[value] }))}
          value={how}
          onValue={onHow}
        />
      )}
      {how === 'secret' && (
        <Field
          label="Your secret, to sign this"
          type="password"
          value={secret}
          onValue={onSecret}
          pointer="/sign/secret"
          required
        />
      )}
      {ways.length === 1 && how !== 'secret' && <p>You sign with {words[how]}.</p>}
    </>
  );
}
