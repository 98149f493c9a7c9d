import { useId } from 'preact/hooks';

interface SelectProps {
  label: string;
  value: string;
  onValue(value: string): void;
  options: readonly { value: string; text: string }[];
}

/** One of many. Nothing is chosen before somebody chooses. */
export function Select({ label, value, onValue, options }: SelectProps) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select id={id} required value={value} onChange={(event) => onValue(event.currentTarget.value)}>
        <option value="">Choose one</option>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
    </div>
  );
}
