import type { ComponentChildren } from 'preact';
import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';

interface AgeLineProps {
  what: string;
  age: Pick<Schemas['RecordState']['signedHead'], 'made' | 'hours' | 'old' | 'oldestHours'>;
  /** What to do where none was ever made. */
  ifNone: string;
  children?: ComponentChildren;
}

/** How old something is; what is old is said first, by word and by shape. */
export function AgeLine({ what, age, ifNone, children }: AgeLineProps) {
  const { operator } = useSession();
  const { made, hours, old, oldestHours } = age;
  if (made === null || hours === null) {
    return (
      <p>
        <span class="state heavy">missing</span> {what}. {ifNone}
      </p>
    );
  }
  return (
    <p>
      {old && <span class="state heavy">old</span>} {what}: {withOffset(made, operator.base)}, {agoWords(hours)}.
      {old && <strong> Older than {oldestHours} hours: find out why.</strong>}
      {children}
    </p>
  );
}

/** `less than an hour ago`, `3 hours ago`, `4 days ago`. */
export function agoWords(hours: number): string {
  if (hours < 1) return 'less than an hour ago';
  if (hours < 48) return hours === 1 ? '1 hour ago' : `${hours} hours ago`;
  return `${Math.floor(hours / 24)} days ago`;
}
