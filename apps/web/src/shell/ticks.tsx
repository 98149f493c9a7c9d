import { Tick } from './fields.js';

interface TicksProps {
  legend: string;
  options: readonly { value: string; text: string }[];
  values: readonly string[];
  onValues(values: string[]): void;
}

/** Several of several. */
export function Ticks({ legend, options, values, onValues }: TicksProps) {
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div class="choices">
        {options.map(({ value, text }) => (
          <Tick
            key={value}
            label={text}
            ticked={values.includes(value)}
            onTick={(ticked) => onValues(ticked ? [...values, value] : values.filter((one) => one !== value))}
          />
        ))}
      </div>
    </fieldset>
  );
}
