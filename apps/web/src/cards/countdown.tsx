import { useEffect, useRef, useState } from 'preact/hooks';
import { clockMoved, serverAtLeast } from '../api/server-clock.js';

/** Not to ask a server that cannot be reached every second. */
const ASK_AGAIN_MS = 15_000;

/**
 * Seconds from now on the server's clock until an instant; 0 once it is over, never before. Right after a reload too.
 * @param readAgain asks the server for its time, after the device slept or its clock was set
 */
export function useSecondsUntil(until: string | null, readAgain: () => void): number {
  const [, setTick] = useState(0);
  const ask = useRef(readAgain);
  ask.current = readAgain;
  useEffect(() => {
    if (until === null) return undefined;
    let askedMs = -ASK_AGAIN_MS;
    const look = () => {
      setTick((tick) => tick + 1);
      if (!clockMoved() || performance.now() - askedMs < ASK_AGAIN_MS) return;
      askedMs = performance.now();
      ask.current();
    };
    const timer = setInterval(look, 1000);
    document.addEventListener('visibilitychange', look);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', look);
    };
  }, [until]);
  if (until === null) return 0;
  return Math.max(0, Math.ceil((Date.parse(until) - serverAtLeast()) / 1000));
}

/** "9:05 left", to be read at any time; said aloud once a minute, and when it is over. */
export function Countdown({ seconds }: { seconds: number }) {
  const text = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
  return (
    <>
      <p class="strong" role="timer" aria-live="off">
        {seconds === 0 ? 'The time is over.' : `${text} left`}
      </p>
      <p class="unseen" role="status">
        {saidAloud(seconds)}
      </p>
    </>
  );
}

function saidAloud(seconds: number): string {
  if (seconds === 0) return 'The time is over';
  const minutes = Math.ceil(seconds / 60);
  return minutes === 1 ? 'Less than a minute to go' : `Not more than ${minutes} minutes to go`;
}
