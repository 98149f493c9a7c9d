/** The people, the aircraft and the flights of the story of the start valve, and what everybody in it asks for. */
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

/** What the steps of the story hand to each other. */
export const story = {
  /** Every instant; the demo is loaded in the small hours of 15 January at its base, two hours before UTC. */
  clock: '2026-01-15T03:00:00.000Z',
  mark: '',
  aircraft: '',
  defect: '',
  /** Ids by flight number. */
  flights: {} as Record<string, string>,
  people: {} as Record<string, ApiClient>,
  server: undefined as unknown as RunningServer,
};

export const ENTRY = '80-12-11';

export async function begin(): Promise<void> {
  story.server = await runningServer({ now: () => story.clock, demo: true });
  story.clock = '2026-01-15T12:12:00.000Z';
  for (const name of ['hebba', 'odrin', 'brask', 'wenna']) story.people[name] = await story.server.signIn(name);
  const fleet = await control().get<Shapes['Fleet']>('/api/fleet');
  const [first] = fleet.aircraft as [Shapes['FleetLine']];
  story.aircraft = first.id;
  story.mark = first.registration;
  const view = await control().get<Shapes['AircraftView']>(`/api/aircraft/${story.aircraft}`);
  for (const { number, id } of view.flights) story.flights[number] = id;
}

export function person(name: string): ApiClient {
  const found = story.people[name];
  if (!found) throw new Error(`${name} is not signed in`);
  return found;
}
export const commander = () => person('hebba');
export const technician = () => person('odrin');
export const control = () => person('brask');
export const quality = () => person('wenna');

export async function lineOfFleet(): Promise<Shapes['FleetLine']> {
  const fleet = await control().get<Shapes['Fleet']>('/api/fleet');
  const line = fleet.aircraft.find(({ id }) => id === story.aircraft);
  if (!line) throw new Error(`${story.mark} is not in the fleet`);
  return line;
}

export const answerFor = (flight: string): Promise<Shapes['Verdict']> =>
  control().get(`/api/aircraft/${story.aircraft}/answer?flight=${story.flights[flight]}`);

/** What row 1 would give for a flight, if it were recorded; nothing is. */
export async function tried(flight: string): Promise<Shapes['Verdict']> {
  const propose = [{ defect: story.defect, entry: ENTRY, units: ['1'], row: '1' }];
  const asked = { aircraft: story.aircraft, flight: story.flights[flight], propose };
  return (await technician().post<Shapes['Verdict']>('/api/dispatch/questions', asked)).body;
}

export const defectView = (): Promise<Shapes['DefectView']> => technician().get(`/api/defects/${story.defect}`);

export const workOf = ({ work }: Shapes['Verdict']): string[] => work.map((one) => one.work).toSorted();
