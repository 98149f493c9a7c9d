import { stepsOf } from '../words/words.js';

/** Cautions first, then what to do, one step a line. */
export function Steps({ text, cautions }: { text: string; cautions: readonly string[] }) {
  return (
    <>
      {cautions.length > 0 && (
        <div class="caution">
          <p class="strong">Caution</p>
          <ul>
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </div>
      )}
      <ol class="steps">
        {stepsOf(text).map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </>
  );
}
