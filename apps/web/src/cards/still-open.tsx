import { useId } from 'preact/hooks';
import type { CardView } from './step-props.js';

const MOST_AT_ONCE = 6;

/** What is to be done before the card can be signed: what is still out first, then the steps in their order. */
export function StillOpen({ missing }: Pick<CardView['work'], 'missing'>) {
  const id = useId();
  const later = missing.slice(MOST_AT_ONCE);
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>It can be signed once this is done: {missing.length}</h2>
      <Lines lines={missing.slice(0, MOST_AT_ONCE)} />
      {later.length > 0 && (
        <details>
          <summary>And {later.length} more</summary>
          <Lines lines={later} />
        </details>
      )}
    </section>
  );
}

const Lines = ({ lines }: { lines: readonly string[] }) => (
  <ul class="plain-list">
    {lines.map((line) => (
      <li key={line}>{line}</li>
    ))}
  </ul>
);
