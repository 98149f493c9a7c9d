import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';

/** On a fresh server there is nobody to sign in: who runs it is told how the first one comes to be. */
export function NobodyYet() {
  const { value } = useRead<Schemas['Anybody']>('/opening/anybody');
  if (value === null || value.anybody) return null;
  return (
    <div class="caution">
      <p class="strong">Nobody can sign in here yet.</p>
      <p>Whoever runs this server makes the operator and its first administrator there, by one command:</p>
      <p>
        <code class="breakable">
          npm run -s proviso -- operator add --code QXA --name "Example Air" --base Europe/Paris --preset easa
          --administrator "Ada Brenn" --sign-in ada
        </code>
      </p>
      <p>It tells a first secret, which signs in here. The command explains each part with --help.</p>
    </div>
  );
}
