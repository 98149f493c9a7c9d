import { Choice, Tick } from '../shell/fields.js';

const ONE_OF = ' one of these';

interface UnitChoiceProps {
  installed: readonly string[];
  units: readonly string[];
  oneOf: boolean;
  onUnits(units: string[], oneOf: boolean): void;
}

/** Which unit failed: one, or one of several when nobody knows which. */
export function UnitChoice({ installed, units, oneOf, onUnits }: UnitChoiceProps) {
  if (installed.length < 2) return null;
  const options = [
    ...installed.map((unit) => ({ value: unit, text: unit })),
    { value: ONE_OF, text: 'One of these, not known which' },
  ];
  return (
    <Choice
      legend="Which one failed?"
      options={options}
      value={oneOf ? ONE_OF : (units[0] ?? null)}
      onValue={(value) => (value === ONE_OF ? onUnits([...installed], true) : onUnits([value], false))}
    >
      {oneOf && installed.length > 2 && (
        <div class="choices inner" role="group" aria-label="It may be">
          {installed.map((unit) => (
            <Tick
              key={unit}
              label={unit}
              ticked={units.includes(unit)}
              onTick={(ticked) => onUnits(ticked ? [...units, unit] : units.filter((one) => one !== unit), true)}
            />
          ))}
        </div>
      )}
    </Choice>
  );
}
