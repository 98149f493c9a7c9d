import { useId } from 'preact/hooks';

interface SelectProps {
  label: string;
  value: string;
  onValue(value: string): void;
  options: readonly { value: string; text: string }[];
  /** May be left open. */
  optional?: boolean;
}

/** One of many. Nothing is chosen before somebody chooses. */
export function Select({ label, value, onValue, options, optional = false }: SelectProps) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>
        {label}
        {optional && <span class="soft"> (if any)</span>}
      </label>
      <select id={id} required={!optional} value={value} onChange={(event) => onValue(event.currentTarget.value)}>
        <option value="">{optional ? 'Nobody has said' : 'Choose one'}</option>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
    </div>
  );
}
