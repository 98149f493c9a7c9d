import { maintenanceAt, PERSON, sayStation } from '../at-stop.js';
import type { Saver } from '../next-flights.js';
import { blockedWork, minutesOfBlocked, sayWork } from './blocked-work.js';
import { flyAgain, sayFlight, stopAt, type Saving } from './saving.js';

/** Somebody authorised and equipped is sent to the station where the work is owed. */
export async function personSent(saving: Saving): Promise<Saver[]> {
  const { plan, stops, flights } = saving;
  const broken = plan.legs[plan.p]!;
  const blocked = blockedWork(broken);
  if (blocked.length === 0 || maintenanceAt(stops, broken.frame.situation, broken.flight) === true) return [];
  const there = { value: true, source: 'somebody sent there' };
  const sent = flights.map((flight) =>
    flight.id === broken.flight.id ? { ...flight, facts: { ...flight.facts, [PERSON]: there } } : flight,
  );
  const flown = await flyAgain(saving, (before) => before, sent);
  if (flown === null) return [];
  const from = sayStation(stops, broken.flight.from);
  const minutes = minutesOfBlocked(blocked);
  const work = blocked.map((one) => one.work);
  const text = `Send somebody authorised and equipped to ${from} before ${sayFlight(broken.flight)}: ${sayWork(blocked)}.`;
  return [
    { kind: 'send-person', text, size: 1, minutes, stops: [stopAt(saving, plan.p, minutes)], work, keeps: flown.p },
  ];
}
