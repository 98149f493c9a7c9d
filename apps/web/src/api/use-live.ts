import { useEffect } from 'preact/hooks';
import type { Reading } from './use-read.js';

const EVERY_MS = 60_000;
/** What is sealed together is read once. */
const GATHER_MS = 250;

interface Change {
  aircraft: string | null;
}

/**
 * Reads again when something was done to this aircraft, or to any where none is named; and each minute, in case nothing
 * was heard. Never for a form: what somebody signs stands still under his hands.
 *
 * A hidden page hears nothing and reads again when it is seen: a browser keeps six connections to one server, for all of
 * its pages together.
 */
export function useLive({ readAgain }: Reading<unknown>, aircraft?: string): void {
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let events: EventSource | null = null;
    const again = (): void => {
      clearTimeout(timer);
      timer = setTimeout(() => void readAgain(), GATHER_MS);
    };
    const changed = (event: MessageEvent<string>): void => {
      const { aircraft: of } = JSON.parse(event.data) as Change;
      if (aircraft === undefined || of === null || of === aircraft) again();
    };
    const hear = (): void => {
      events = new EventSource('/api/events');
      events.addEventListener('change', changed);
      events.addEventListener('behind', again);
    };
    const hush = (): void => {
      events?.close();
      events = null;
    };
    const seenOrHidden = (): void => {
      hush();
      if (document.visibilityState !== 'visible') return;
      hear();
      again();
    };
    if (document.visibilityState === 'visible') hear();
    const regularly = setInterval(() => events && again(), EVERY_MS);
    document.addEventListener('visibilitychange', seenOrHidden);
    return () => {
      hush();
      clearInterval(regularly);
      clearTimeout(timer);
      document.removeEventListener('visibilitychange', seenOrHidden);
    };
  }, [readAgain, aircraft]);
}
