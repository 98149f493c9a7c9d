import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { MOMENTS } from '../gate/when-found.js';
import { useSession } from '../session/session.js';
import { Choice, Field } from '../shell/fields.js';
import { instantOf, NO_WALL, WallInput, type WallValue } from '../shell/wall-input.js';
import { withOffset } from '../words/time.js';

type Correctable = Schemas['Correctable'];

export const isTime = (field: string): boolean =>
  field === 'occurredAt' || field === 'recordedAt' || field === 'doneAt';

const WHAT: Record<string, string> = { recordedAt: 'in the log', doneAt: 'it was done' };

const LONG: Record<string, number> = { description: 4000, workDone: 4000, checks: 2000 };

const WORDS_OF_A_LINE = new Set(['sheet', 'system', 'unit', 'partNumber', 'serialOn', 'serialOff', 'certificate']);

const HINTS: Record<string, string> = {
  system: 'Two digits',
  unit: 'As the MEL names it, such as L or 2',
  placardText: 'Word for word as on the placard',
};

/** What stands there now, in words. */
export function inWords({ field, reads }: Correctable, base: string): string {
  if (reads === null || reads.trim() === '') return 'nothing';
  if (isTime(field)) return withOffset(reads, base);
  return MOMENTS.find(({ value }) => field === 'whenFound' && value === reads)?.text ?? reads;
}

interface CorrectedValueProps {
  what: Correctable;
  value: string;
  onValue(value: string): void;
}

/** What it should read: a time by the clock of the base, one of the moments, or words. */
export function CorrectedValue({ what, value, onValue }: CorrectedValueProps) {
  const { field, reads } = what;
  if (isTime(field)) return <CorrectedTime field={field} reads={reads} onValue={onValue} />;
  if (field === 'whenFound') {
    return <Choice legend="It should read" options={MOMENTS} value={value as never} onValue={onValue} />;
  }
  const line = WORDS_OF_A_LINE.has(field);
  return (
    <Field
      label="It should read"
      hint={HINTS[field]}
      lines={line ? undefined : 3}
      most={LONG[field] ?? 1000}
      value={value}
      onValue={onValue}
      pointer="/now"
      required
    />
  );
}

function CorrectedTime({
  field,
  reads,
  onValue,
}: Omit<CorrectedValueProps, 'what' | 'value'> & Pick<Correctable, 'field' | 'reads'>) {
  const { operator } = useSession();
  const [wall, setWall] = useState<WallValue>(NO_WALL);

  function tell(next: WallValue): void {
    setWall(next);
    onValue(instantOf(next, operator.base) ?? '');
  }

  return (
    <>
      {reads && <p>It reads now: {withOffset(reads, operator.base)}</p>}
      {field !== 'occurredAt' && (
        <p class="hint">It can only become earlier; what that moves is said below before you sign.</p>
      )}
      <WallInput
        what={WHAT[field] ?? 'it happened'}
        zone={operator.base}
        value={wall}
        onValue={tell}
        pointer="/now"
      />
    </>
  );
}
