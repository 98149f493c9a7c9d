import type { Schemas } from '../api/client.js';

/** Corrections that wait for a second person to look at the aircraft. */
export function Corrections({ view }: { view: Schemas['RegisterView'] }) {
  if (view.corrections.length === 0) return null;
  return (
    <section>
      <h2>Waiting for a second look</h2>
      <ul class="plain-list cards">
        {view.corrections.map(({ id, field, was, now, reason, by }) => (
          <li key={id}>
            <a class="big" href={`/aircraft/${view.aircraft}/left/second-looks?asked=${id}`}>
              <span class="strong">
                {field === 'tag' ? 'The number' : 'The place'} “{was}” should read “{now}”
              </span>
              <span class="soft block">
                {by}: {reason}
              </span>
            </a>
            <a class="button" href={`/aircraft/${view.aircraft}/left/as-written?asked=${id}`}>
              It stays as written
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
