import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';

/** Says that a defect keeps coming back, where the operator's rule says so or maintenance control decided it. */
export function RecurrenceFlag({ defect }: { defect: string }) {
  const { value } = useRead<Schemas['RecurrenceView']>(`/defects/${defect}/recurrence`);
  if (value === null || value.times < 2) return null;
  const decided = value.decided.at(-1);
  return (
    <p class={value.repetitive ? 'caution' : 'soft'}>
      {value.repetitive ? 'Repetitive by the rule' : 'Seen before'}: {value.times} write-ups alike ({value.rule}).{' '}
      {decided && `Maintenance control decided: ${decided.repetitive ? 'repetitive' : 'not repetitive'}. `}
      <a href={`/defects/${defect}/recurrence`}>Side by side</a>
    </p>
  );
}
