import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';
import { finds } from './finds.js';

/** As many are read at a glance; more need a field to find one by. */
const AT_A_GLANCE = 7;

interface FinderProps<T> {
  of: readonly T[];
  /** All that one of them may be found by. */
  textOf(one: T): string;
  /** What it may be found by, in words, under the label. */
  hint: string;
  children(found: readonly T[]): ComponentChildren;
}

/** A list with a field above it to find one of many by; the list alone where it is short. */
export function Finder<T>({ of, textOf, hint, children }: FinderProps<T>) {
  const id = useId();
  const [typed, setTyped] = useState('');
  if (of.length <= AT_A_GLANCE) return <>{children(of)}</>;
  const found = of.filter((one) => finds(typed, textOf(one)));
  return (
    <>
      <div class="field" role="search">
        <label for={id}>Find</label>
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
        <input
          id={id}
          type="search"
          value={typed}
          maxLength={80}
          autoComplete="off"
          aria-describedby={`${id}-hint`}
          onInput={({ currentTarget }) => setTyped(currentTarget.value)}
        />
        <p class="soft" role="status">
          {typed.trim() !== '' && `${found.length === 0 ? 'None' : found.length} of ${of.length}`}
        </p>
      </div>
      {children(found)}
    </>
  );
}
