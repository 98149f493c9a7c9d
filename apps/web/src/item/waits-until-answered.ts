import type { Schemas } from '../api/client.js';

const FLIGHT_GOES_ON = ['commander-judges', 'no-relief'];

/** What waits for the answer: this flight and every later one, or the later ones where the MEL has stopped deciding. */
export function waitsUntilAnswered({ onItsFlight }: Pick<Schemas['DefectLine'], 'onItsFlight'>): string {
  return onItsFlight && FLIGHT_GOES_ON.includes(onItsFlight.holds)
    ? 'Until it is answered the aircraft may not leave on another flight.'
    : 'Until it is answered the aircraft may not fly.';
}
