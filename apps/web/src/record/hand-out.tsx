import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { Select } from '../shell/select.js';
import { Read } from '../shell/reading.js';
import { itemName } from '../words/words.js';

/** Whole histories to hand out, of one aircraft or of one open item; a closed one is handed out on its own page. */
export function HandOut() {
  const fleet = useRead<Schemas['Fleet']>('/fleet');
  const open = useRead<Schemas['DefectList']>('/defects');
  const [of, setOf] = useState('');
  return (
    <section aria-label="Hand out a history">
      <h2>Hand out a whole history</h2>
      <p class="soft">
        It holds every entry word for word, and names people. The file with proofs is checked without this house:
        proviso record check.
      </p>
      <Read of={fleet}>
        {({ aircraft }) => (
          <Read of={open}>
            {({ defects }) => (
              <Select
                label="Of which aircraft or open item"
                value={of}
                onValue={setOf}
                options={[
                  ...aircraft.map(({ id, registration }) => ({ value: `/aircraft/${id}`, text: registration })),
                  ...defects.map((one) => ({ value: `/defects/${one.id}`, text: `${one.number} ${itemName(one)}` })),
                ]}
              />
            )}
          </Read>
        )}
      </Read>
      {of !== '' && (
        <div class="buttons">
          <a class="button" href={`/api${of}/history.pdf`} download="history.pdf">
            Whole history as PDF
          </a>
          <a class="button" href={`/api${of}/history.json`} download="history.json">
            Whole history with proofs
          </a>
        </div>
      )}
    </section>
  );
}
