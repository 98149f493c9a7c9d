import { announce } from '../shell/announce.js';
import { SecretForm } from './secret-form.js';
import { useSession } from './session.js';

/** A new secret in place of the old one; every other session of one's own ends with it. */
export function YourSecret() {
  const { means } = useSession();
  if (!means.secret) return null;
  return (
    <section>
      <h2>Your secret</h2>
      <details>
        <summary>Change it</summary>
        <SecretForm
          label="The one you have"
          changed={() => announce('Your secret is changed. Every other session of yours has ended.')}
        />
      </details>
    </section>
  );
}
