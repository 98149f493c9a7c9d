import { useEffect, useState } from 'preact/hooks';
import { serverNow } from '../api/server-clock.js';

/** Seconds from now on the server's clock until an instant; 0 once it is over. Right after a reload too. */
export function useSecondsUntil(until: string | null): number {
  const [, setTick] = useState(0);
  useEffect(() => {
    if (until === null) return undefined;
    const timer = setInterval(() => setTick((tick) => tick + 1), 1000);
    return () => clearInterval(timer);
  }, [until]);
  if (until === null) return 0;
  return Math.max(0, Math.ceil((Date.parse(until) - Date.parse(serverNow())) / 1000));
}

/** "9:05 left" */
export function Countdown({ seconds }: { seconds: number }) {
  const text = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
  return <p class="strong">{seconds === 0 ? 'The time is over.' : `${text} left`}</p>;
}
