import type { Schemas } from '../api/client.js';
import { capital } from '../words/words.js';

/** One correction that waits for a second person: what stands, what should stand, and who says so. */
export function Waiting({ line }: { line: Schemas['CorrectionWaiting'] }) {
  const { field, was, now, by, reason } = line;
  return (
    <p>
      {capital(field)} reads <strong>{was ?? 'nothing'}</strong> and should read <strong>{now}</strong>.{' '}
      <span class="soft">
        {by}: {reason}
      </span>
    </p>
  );
}

/** Said first on the page of an item, since the aircraft does not leave until somebody has looked. */
export function WaitingCorrections({ view }: { view: Schemas['DefectView'] }) {
  const { waiting, defect } = view;
  if (waiting.length === 0) return null;
  return (
    <section class="card">
      <h2>Waits for a second look</h2>
      {waiting.map((line) => (
        <Waiting key={line.id} line={line} />
      ))}
      <p>
        {defect.state !== 'closed'
          ? 'The aircraft does not leave until another person has looked and signed.'
          : 'Until another person has looked and signed, all reads as it was.'}
      </p>
      <div class="buttons">
        <a class="button" href={`/defects/${defect.id}/second-look`}>
          I looked
        </a>
        <a class="button" href={`/defects/${defect.id}/as-written`}>
          It stays as written
        </a>
      </div>
    </section>
  );
}
