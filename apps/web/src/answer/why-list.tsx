import type { WhyLine } from './why.js';

/** Lines of why, under the item each is about. */
export function WhyList({ lines }: { lines: WhyLine[] }) {
  if (lines.length === 0) return null;
  const abouts = [...new Set(lines.map(({ about }) => about))];
  return (
    <ul class="why">
      {abouts.map((about) => (
        <li key={about ?? ''}>
          {about && <span class="strong">{about}</span>}
          {lines
            .filter((line) => line.about === about)
            .map(({ key, text, because }) => (
              <span class="block" key={key}>
                {text === '' ? because : `${text}. ${because}`}
              </span>
            ))}
        </li>
      ))}
    </ul>
  );
}
