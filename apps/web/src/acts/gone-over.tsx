import { Tick } from '../shell/fields.js';

export interface GoneOver {
  toolsAccounted: boolean;
  panelsClosed: boolean;
  registerChecked: boolean;
}

export const NOT_GONE_OVER: GoneOver = { toolsAccounted: false, panelsClosed: false, registerChecked: false };

const LINES: { key: keyof GoneOver; label: string }[] = [
  { key: 'toolsAccounted', label: 'Every tool is accounted for' },
  { key: 'panelsClosed', label: 'Every panel and cowl is closed' },
  { key: 'registerChecked', label: 'What is left on the aircraft is what its register says' },
];

interface GoneOverTicksProps {
  seen: GoneOver;
  onSeen(seen: GoneOver): void;
}

/** The general verification: nothing is ticked before somebody has looked. */
export function GoneOverTicks({ seen, onSeen }: GoneOverTicksProps) {
  return (
    <fieldset>
      <legend>You went over the aircraft</legend>
      <div class="choices">
        {LINES.map(({ key, label }) => (
          <Tick key={key} label={label} ticked={seen[key]} onTick={(ticked) => onSeen({ ...seen, [key]: ticked })} />
        ))}
      </div>
    </fieldset>
  );
}
