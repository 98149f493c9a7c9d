/** An operator whose MEL is the published rows of T1: its people, its aircraft, flights between two stations. */
import { readFileSync } from 'node:fs';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningOptions, type RunningServer } from '../support/running-server.js';
import { type Airline, anAirline, type FlightAsked } from './an-airline.js';

const MEL = readFileSync(new URL('../cases/published-rows-t1.yaml', import.meta.url), 'utf8');

const CHANGED = { reason: 'as things stand now' };

export interface PublishedRowsAsked {
  at: string;
  aircraft: string[];
  flights: FlightAsked[];
  settings?: Record<string, unknown>;
  server?: Omit<RunningOptions, 'now'>;
}

export class PublishedRowsScene {
  server!: RunningServer;
  airline!: Airline;
  technician!: ApiClient;
  commander!: ApiClient;
  control!: ApiClient;

  constructor(
    private readonly asked: PublishedRowsAsked,
    public clock = asked.at,
  ) {}

  async open(): Promise<void> {
    const { aircraft, flights, settings = {}, server = {} } = this.asked;
    this.server = await runningServer({ ...server, now: () => this.clock });
    this.airline = await anAirline(this.server, {
      code: 'QPR',
      base: 'UTC',
      aircraftType: 'T1',
      settings: { preset: 'easa', combinationNeedsAcceptance: false, ...settings },
      people: [
        { signIn: 'ullo', name: 'Ullo Fenn', roles: ['administrator', 'mel-engineer'] },
        {
          signIn: 'yorvin',
          name: 'Yorvin Tesk',
          roles: ['technician'],
          privileges: ['write-up', 'defer', 'sign-procedure', 'release'],
        },
        { signIn: 'hesk', name: 'Hesk Aldane', roles: ['commander'], privileges: ['write-up', 'sign-procedure'] },
        {
          signIn: 'orla',
          name: 'Orla Quist',
          roles: ['maintenance-control'],
          privileges: ['defer', 'sign-procedure', 'judge-combination'],
        },
      ],
      aircraft,
      flights,
    });
    await (await this.server.signIn('ullo')).post('/api/mel', { file: 't1.yaml', text: MEL });
    await this.goTo(this.clock);
  }

  /** A session lasts twelve hours: all sign in anew. */
  async goTo(at: string): Promise<void> {
    this.clock = at;
    this.technician = await this.server.signIn('yorvin');
    this.commander = await this.server.signIn('hesk');
    this.control = await this.server.signIn('orla');
  }

  aircraft(mark: string): string {
    return this.airline.aircraft[mark] ?? '';
  }

  flight(number: string): string {
    return this.airline.flights[number] ?? '';
  }

  /** Written up at this moment, its item named. */
  async writtenUp(mark: string, entry: string, unit = '1'): Promise<string> {
    const { body } = await this.technician.post<Shapes['ActDone']>('/api/defects', {
      aircraft: this.aircraft(mark),
      origin: 'crew',
      description: `Item ${entry} ${unit} does not work.`,
      recordedAt: this.clock,
      item: { entry, units: [unit] },
    });
    return body.defect.id;
  }

  async deferred(mark: string, entry: string, row: string, unit = '1'): Promise<string> {
    const id = await this.writtenUp(mark, entry, unit);
    await this.technician.sign(id, 'deferral', { act: 'defer', row }, { row });
    return id;
  }

  async signProcedure(defect: string, work: string, client = this.technician): Promise<void> {
    await client.sign(defect, 'procedures', { act: 'procedure', work }, { work, doneAt: this.clock, leaves: [] });
  }

  /** An answer to a question about one flight. */
  async say(mark: string, flight: string, key: string, value: unknown, client = this.control): Promise<void> {
    await client.put(`/api/aircraft/${this.aircraft(mark)}/facts`, {
      key,
      value,
      flight: this.flight(flight),
      source: 'flight plan',
      observedAt: this.clock,
    });
  }

  answer(mark: string, flight: string): Promise<Shapes['Verdict']> {
    return this.control.get(`/api/aircraft/${this.aircraft(mark)}/answer?flight=${this.flight(flight)}`);
  }

  ahead(mark: string): Promise<Shapes['NextFlights']> {
    return this.control.get(`/api/aircraft/${this.aircraft(mark)}/next-flights`);
  }

  /** One hour in the air, entered by control as somebody read it from the log. */
  async flew(mark: string, number: string, offBlockAt: string): Promise<void> {
    const at = (minutes: number) => new Date(Date.parse(offBlockAt) + minutes * 60_000).toISOString();
    await this.control.post(`/api/aircraft/${this.aircraft(mark)}/legs`, {
      flight: number,
      scheduledOn: offBlockAt.slice(0, 10),
      from: 'QWA',
      to: 'QWB',
      ending: 'arrived',
      offBlockAt,
      airborneAt: at(10),
      landedAt: at(70),
      onBlockAt: at(80),
      delays: [],
      reason: 'read from the technical log',
    });
  }

  changeRow(defect: string, row: string, more: object = {}, client = this.technician): Promise<Shapes['ActDone']> {
    return client.sign(defect, 'row', { act: 'change-row', row }, { row, ...CHANGED, ...more });
  }

  changeRowRefused(defect: string, row: string, more: object = {}, client = this.technician) {
    return client.signRefused(defect, 'row', { act: 'change-row', row }, { row, ...CHANGED, ...more });
  }

  async fixed(defect: string): Promise<void> {
    const done = { workDone: 'Replaced.', reference: 'AMM, revision 4', complete: true, testAsked: false };
    await this.technician.sign(defect, 'rectification', { act: 'rectify' }, { ...done, inspectionAsked: false });
    await this.technician.sign(
      defect,
      'release',
      { act: 'release' },
      { verified: { toolsAccounted: true, panelsClosed: true, registerChecked: true } },
    );
  }

  async ask(mark: string, flight: string, more: object = {}): Promise<Shapes['Verdict']> {
    const body = { aircraft: this.aircraft(mark), flight: this.flight(flight), propose: [], ...more };
    return (await this.control.post<Shapes['Verdict']>('/api/dispatch/questions', body)).body;
  }
}
