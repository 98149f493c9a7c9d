/** Which planned flight a leg belongs to. */
import type { FlightRow } from '#store';
import type { LegContent } from './leg-content.js';

const DAY = 86_400_000;

/**
 * The planned flight of the same number, from the same station, on the scheduled day or the one after it (a later leg of
 * the same flight); the nearest of several, null when there is none. A flight number is `QB 410` in the plan and `QB410`
 * in messages.
 */
export function planOfLeg(
  leg: Pick<LegContent, 'aircraftId' | 'flight' | 'scheduledOn' | 'fromStation' | 'toStation' | 'offBlockAt'>,
  flights: readonly FlightRow[],
  airlineCodes: Readonly<Record<string, string>> = {},
): string | null {
  const from = Date.parse(`${leg.scheduledOn}T00:00:00Z`);
  const away = ({ offBlockAt }: FlightRow) => Math.abs(Date.parse(offBlockAt) - Date.parse(leg.offBlockAt));
  const fitting = flights.filter((flight) => {
    const planned = Date.parse(flight.offBlockAt);
    const sameRoute =
      leg.fromStation === null ? leg.toStation === flight.toStation : leg.fromStation === flight.fromStation;
    const sameDays = planned >= from && planned < from + 2 * DAY;
    return (
      flight.aircraftId === leg.aircraftId &&
      sameRoute &&
      sameDays &&
      flightName(flight.number, airlineCodes) === leg.flight
    );
  });
  return fitting.toSorted((one, other) => away(one) - away(other))[0]?.id ?? null;
}

/** As messages are read: the airline's one code, the number without leading zeros, the suffix. */
export function flightName(number: string, airlineCodes: Readonly<Record<string, string>>): string {
  const plain = number.toUpperCase().replace(/[^A-Z0-9]/g, '');
  const [, airline = '', digits = '', suffix = ''] =
    /^([A-Z]{3}|[A-Z][A-Z0-9]|\d[A-Z])(\d{1,4})([A-Z]?)$/.exec(plain) ?? [];
  if (digits === '') return plain;
  const code = Object.hasOwn(airlineCodes, airline) ? airlineCodes[airline] : airline;
  return `${code}${Number(digits)}${suffix}`;
}
