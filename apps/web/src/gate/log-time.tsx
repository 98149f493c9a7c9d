import { useEffect, useState } from 'preact/hooks';
import { serverNow } from '../api/server-clock.js';
import { Field, Tick } from '../shell/fields.js';
import { NO_WALL, type WallValue, WallInput } from '../shell/wall-input.js';
import { withOffset } from '../words/time.js';

/** When it was written in the log, and when it happened. */
export interface LogTimes {
  /** True when a paper sheet says another time than now. */
  earlier: boolean;
  recorded: WallValue;
  occurred: WallValue;
  reason: string;
}

export const NOW: LogTimes = { earlier: false, recorded: NO_WALL, occurred: NO_WALL, reason: '' };

interface LogTimeProps {
  times: LogTimes;
  onTimes(times: LogTimes): void;
  zone: string;
}

/** The time in the log sets the day of discovery: now, or as the sheet says. */
export function LogTime({ times, onTimes, zone }: LogTimeProps) {
  const now = useMinute();
  const { earlier } = times;
  return (
    <fieldset>
      <legend>Written in the log</legend>
      {!earlier && <p>Now: {withOffset(now, zone)}</p>}
      <Tick
        label="Earlier, on a paper sheet"
        ticked={earlier}
        onTick={(ticked) => onTimes({ ...times, earlier: ticked })}
      />
      {earlier && (
        <>
          <WallInput
            what="in the log"
            zone={zone}
            value={times.recorded}
            onValue={(recorded) => onTimes({ ...times, recorded })}
            pointer="/recordedAt"
          />
          <Field
            label="Why it is entered late"
            lines={2}
            most={1000}
            value={times.reason}
            onValue={(reason) => onTimes({ ...times, reason })}
            pointer="/lateReason"
          />
          <details>
            <summary>The sheet says when it happened</summary>
            <WallInput
              what="it happened"
              zone={zone}
              value={times.occurred}
              onValue={(occurred) => onTimes({ ...times, occurred })}
              pointer="/occurredAt"
              required={false}
            />
          </details>
        </>
      )}
    </fieldset>
  );
}

/** The time now, looked at again every few seconds. */
function useMinute(): string {
  const [now, setNow] = useState(serverNow);
  useEffect(() => {
    const timer = setInterval(() => setNow(serverNow()), 5000);
    return () => clearInterval(timer);
  }, []);
  return now;
}
