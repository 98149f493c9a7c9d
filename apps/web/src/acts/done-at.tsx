import { useSession } from '../session/session.js';
import { Field, Tick } from '../shell/fields.js';
import { type WallValue, WallInput } from '../shell/wall-input.js';

export interface DoneTime {
  earlier: boolean;
  at: WallValue;
  /** Why it is entered only now; asked for where the aircraft left meanwhile. */
  why: string;
}

/** When it was done: now, unless it is signed some time later. */
export function DoneAt({ done, onDone }: { done: DoneTime; onDone(done: DoneTime): void }) {
  const { operator } = useSession();
  return (
    <>
      <Tick
        label="It was done earlier than now"
        ticked={done.earlier}
        onTick={(earlier) => onDone({ ...done, earlier })}
      />
      {done.earlier && (
        <>
          <WallInput
            what="it was done"
            zone={operator.base}
            value={done.at}
            onValue={(at) => onDone({ ...done, at })}
            pointer="/doneAt"
          />
          <Field
            label="Why it is entered only now"
            hint="Needed where the aircraft left meanwhile: what was missed stays missed without a reason."
            value={done.why}
            onValue={(why) => onDone({ ...done, why })}
            pointer="/lateReason"
            most={1000}
          />
        </>
      )}
    </>
  );
}
