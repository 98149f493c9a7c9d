import { Said } from '../shell/said.js';
import { sentence } from '../words/readable.js';
import type { WhyLine } from './why.js';

/** Lines of why, under the item each is about: what is needed, and what was found. */
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
            .map((line) => (
              <OneLine key={line.key} line={line} />
            ))}
        </li>
      ))}
    </ul>
  );
}

function OneLine({ line: { text, because } }: { line: WhyLine }) {
  if (text === '') {
    return (
      <span class="block">
        <Said text={sentence(because)} />
      </span>
    );
  }
  return (
    <>
      <span class="block">Needed: {sentence(text)}</span>
      <span class="block">
        Found: <Said text={because} />.
      </span>
    </>
  );
}
