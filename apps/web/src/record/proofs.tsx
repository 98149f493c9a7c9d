import { useState } from 'preact/hooks';
import { Field } from '../shell/fields.js';

const NUMBER = /^[1-9]\d{0,9}$/;

/** Proof of one entry, and of how the record grew since a head that somebody kept. */
export function Proofs() {
  const [entry, setEntry] = useState('');
  const [since, setSince] = useState('');
  const asked = new URLSearchParams({
    ...(NUMBER.test(entry) ? { entry } : {}),
    ...(NUMBER.test(since) ? { since } : {}),
  }).toString();
  return (
    <section aria-label="Proofs">
      <h2>Prove it to somebody outside</h2>
      <p class="soft">
        The number of an entry stands in the history of each item. A head that was kept outside proves that nothing
        before it was altered since.
      </p>
      <div class="pair">
        <Field label="Number of the entry" value={entry} onValue={setEntry} inputMode="numeric" most={10} short />
        <Field
          label="Entries of a head kept from earlier"
          value={since}
          onValue={setSince}
          inputMode="numeric"
          most={10}
          short
        />
      </div>
      <div class="buttons">
        {asked === '' ? (
          <button type="button" disabled>
            Save the proof
          </button>
        ) : (
          <a class="button" href={`/api/record/proof?${asked}`} download="proof.json">
            Save the proof
          </a>
        )}
      </div>
    </section>
  );
}
