import type { Schemas } from '../api/client.js';
import { Said } from '../shell/said.js';

type Changes = Pick<Schemas['LegWritten'], 'items' | 'answers'>;

/** Which open items and answers read otherwise since, each before and after. */
export function Changed({ items, answers }: Changes) {
  if (items.length + answers.length === 0)
    return <p>No open item and no answer for a next flight reads otherwise.</p>;
  return (
    <>
      <p class="strong">What reads otherwise since:</p>
      <ul>
        {items.map(({ defect, number, description, before, after }) => (
          <li key={defect}>
            <a href={`/defects/${defect}`}>{number}</a> {description}: <Said text={after.words} />{' '}
            <span class="soft">
              Before: <Said text={before.words} />
            </span>
          </li>
        ))}
        {answers.map(({ flight, aircraft, registration, number, before, after }) => (
          <li key={flight}>
            <a href={`/aircraft/${aircraft}/flights/${flight}`}>
              {registration} {number}
            </a>
            : <span class="strong">{after.words}</span>, <Said text={after.why} />{' '}
            <span class="soft">Before: {before.words}</span>
          </li>
        ))}
      </ul>
    </>
  );
}

/** The same in lines of text, to be said on the page that comes next. */
export function changedLines({ items, answers }: Changes): string[] {
  const lines = [
    ...items.map(({ number, after }) => `${number}: ${after.words}`),
    ...answers.map(({ registration, number, after }) => `${registration} ${number}: ${after.words}.`),
  ];
  return lines.length === 0 ? ['No open item and no answer for a next flight reads otherwise.'] : lines;
}
