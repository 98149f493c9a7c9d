import { Page } from '../shell/page.js';
import { SecretForm } from './secret-form.js';

/** Whoever signed in with a first secret chooses an own one before anything else. */
export function OwnSecretPage({ changed }: { changed(): void }) {
  return (
    <Page title="Choose a secret of your own">
      <p>
        You signed in with a first secret that somebody gave you. From now on only you know yours: it signs in your
        name.
      </p>
      <p>
        Whoever gave it to you could have chosen in your place. That you choose now stands in the record of your
        operator; should a first secret that you never used not open any more, tell quality at once.
      </p>
      <SecretForm label="The first secret" changed={changed} />
    </Page>
  );
}
