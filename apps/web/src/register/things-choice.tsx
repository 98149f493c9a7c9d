import type { Schemas } from '../api/client.js';
import { Tick } from '../shell/fields.js';
import { leftKind } from '../words/words.js';

interface ThingsChoiceProps {
  legend: string;
  lines: readonly Schemas['RegisterLine'][];
  chosen: readonly string[];
  onChosen(chosen: string[]): void;
}

/** Which things, ticked one by one by the number on each. */
export function ThingsChoice({ legend, lines, chosen, onChosen }: ThingsChoiceProps) {
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div class="choices">
        {lines.map(({ id, kind, tag, where, owner, undo }) => (
          <Tick
            key={id}
            label={`${leftKind(kind)}, ${tag}: ${where}`}
            hint={`For ${owner}. To undo: ${undo}`}
            ticked={chosen.includes(id)}
            onTick={(ticked) => onChosen(ticked ? [...chosen, id] : chosen.filter((one) => one !== id))}
          />
        ))}
      </div>
    </fieldset>
  );
}
