import type { ComponentChildren } from 'preact';
import type { Reading } from '../api/use-read.js';
import { ProblemBox } from './problem-box.js';

interface ReadingProps<T> {
  of: Reading<T>;
  children: (value: T) => ComponentChildren;
}

/** What was read, or that it is being read, or why it could not be. Older content stays, and is called so. */
export function Read<T>({ of: reading, children }: ReadingProps<T>) {
  const { value, problem, readAgain } = reading;
  return (
    <>
      {problem && (
        <>
          <ProblemBox problem={problem} readAgain={() => void readAgain()} />
          {value !== null && <p class="strong">What stands below was read before that.</p>}
        </>
      )}
      {value === null && !problem && (
        <p role="status" class="soft">
          Reading…
        </p>
      )}
      {value !== null && children(value)}
    </>
  );
}
