import { createContext, type ComponentChildren } from 'preact';
import { useContext, useId } from 'preact/hooks';
import type { FieldError } from '../api/problem.js';

/** What the server said about single fields of the form around. */
export const FieldErrors = createContext<readonly FieldError[]>([]);

interface FieldProps {
  label: string;
  hint?: string | undefined;
  value: string;
  onValue(value: string): void;
  /** JSON pointer under which the value is sent. */
  pointer?: string;
  type?: 'text' | 'password' | 'date' | 'time' | 'search';
  lines?: number;
  required?: boolean;
  most?: number;
  autoComplete?: string;
  inputMode?: 'numeric' | 'decimal' | 'text';
  short?: boolean;
}

/** A labelled input of one line or more. */
export function Field(props: FieldProps) {
  const id = useId();
  const { label, hint, value, onValue, pointer, lines, required = false, most = 200, short } = props;
  const errors = useContext(FieldErrors).filter((error) => error.pointer === pointer);
  const described = [hint ? `${id}-hint` : '', errors.length > 0 ? `${id}-error` : ''].filter(Boolean).join(' ');
  const same = {
    id,
    value,
    required,
    maxLength: most,
    class: short ? 'short' : undefined,
    'aria-describedby': described || undefined,
    'aria-invalid': errors.length > 0,
    onInput: (event: { currentTarget: { value: string } }) => onValue(event.currentTarget.value),
  };
  return (
    <div class="field">
      <label for={id}>
        {label}
        {!required && <span class="soft"> (if any)</span>}
      </label>
      {hint && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {lines ? (
        <textarea {...same} rows={lines} />
      ) : (
        <input
          {...same}
          type={props.type ?? 'text'}
          autoComplete={props.autoComplete ?? 'off'}
          inputMode={props.inputMode}
        />
      )}
      {errors.length > 0 && (
        <p class="field-error" id={`${id}-error`}>
          {errors.map(({ reason }) => reason).join('; ')}
        </p>
      )}
    </div>
  );
}

interface ChoiceProps<T extends string> {
  legend: string;
  hint?: string;
  options: readonly { value: T; text: string }[];
  value: NoInfer<T> | null;
  onValue(value: NoInfer<T>): void;
  children?: ComponentChildren;
}

/** One of several, as large radio buttons. */
export function Choice<T extends string>({ legend, hint, options, value, onValue, children }: ChoiceProps<T>) {
  const name = useId();
  return (
    <fieldset>
      <legend>{legend}</legend>
      {hint && <p class="hint">{hint}</p>}
      <div class="choices">
        {options.map((option) => (
          <label key={option.value} class="choice">
            <input
              type="radio"
              name={name}
              required
              checked={option.value === value}
              onChange={() => onValue(option.value)}
            />
            {option.text}
          </label>
        ))}
      </div>
      {children}
    </fieldset>
  );
}

interface TickProps {
  label: string;
  ticked: boolean;
  onTick(ticked: boolean): void;
  hint?: string | undefined;
}

export function Tick({ label, ticked, onTick, hint }: TickProps) {
  return (
    <label class="choice">
      <input type="checkbox" checked={ticked} onChange={(event) => onTick(event.currentTarget.checked)} />
      <span>
        {label}
        {hint && <span class="hint">{hint}</span>}
      </span>
    </label>
  );
}
