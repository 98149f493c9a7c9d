/** Two operators under two presets, each with an aircraft type of three items, and people who ask, grant and tell. */
import type { ApiClient, Shapes } from '../support/api-client.js';
import { plainList } from '../support/plain-list.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { type Airline, anAirline, type FlightAsked } from './an-airline.js';

export const PRESETS = ['easa', 'faa'] as const;
export type PresetTried = (typeof PRESETS)[number];

export const REQUEST = {
  reason: 'The part is held in customs <script>alert(1)</script>',
  outsideOperatorsControl: true,
  whyNotFixed: 'No part at any station & none to borrow',
  plan: 'Part arrives 8 Feb, fitted the same night',
  parts: 'KL-4471-2, order 7731',
};

const CODES = { easa: 'QPE', faa: 'QPF' };
const mel = (code: string) =>
  plainList(`Operator ${code}`, [
    { number: '33-11-01', category: 'C' },
    { number: '33-11-02', category: 'D' },
    { number: '33-11-03', category: 'A', interval: '4 flights' },
  ]);

const people = (preset: string) => [
  {
    signIn: `technician-${preset}`,
    name: 'Yorvin Tesk',
    roles: ['technician' as const],
    privileges: ['write-up' as const, 'defer' as const, 'sign-procedure' as const, 'release' as const],
  },
  {
    signIn: `engineer-${preset}`,
    name: 'Sibba Orn',
    roles: ['engineer' as const],
    privileges: ['extend' as const, 'concur' as const],
  },
  {
    signIn: `granter-${preset}`,
    name: 'Pell Ravik',
    roles: ['quality' as const],
    privileges: ['extend' as const, 'defer' as const],
  },
  {
    signIn: `inspector-${preset}`,
    name: 'Tamsin Orrel',
    roles: ['technician' as const],
    privileges: ['inspect' as const],
  },
  {
    signIn: `control-${preset}`,
    name: 'Mellory Gand',
    roles: ['mel-engineer' as const, 'maintenance-control' as const],
  },
];

export type Who = 'technician' | 'engineer' | 'granter' | 'control' | 'inspector';

export class ExtensionScene {
  clock = '2026-01-26T10:00:00.000Z';
  server!: RunningServer;
  private readonly airlines = new Map<PresetTried, Airline>();
  private readonly clients = new Map<string, ApiClient>();

  async open(flights: FlightAsked[] = []): Promise<void> {
    this.server = await runningServer({ now: () => this.clock });
    for (const preset of PRESETS) {
      const airline = await anAirline(this.server, {
        code: CODES[preset],
        base: 'UTC',
        aircraftType: 'Ambrel',
        settings: { preset, extensionProcedure: 'OM-A 8.6.1', combinationNeedsAcceptance: false },
        people: people(preset),
        aircraft: ['Q-ABF', 'Q-ABG', 'Q-ABH'],
        flights,
      });
      this.airlines.set(preset, airline);
    }
    await this.goTo(this.clock);
    for (const preset of PRESETS) {
      const file = { file: 'ambrel.yaml', text: mel(CODES[preset]) };
      await this.as('control', preset).post('/api/mel', file);
    }
  }

  /** A session lasts twelve hours: everybody signs in anew. */
  async goTo(at: string): Promise<void> {
    this.clock = at;
    for (const preset of PRESETS) {
      for (const { signIn } of people(preset)) this.clients.set(signIn, await this.server.signIn(signIn));
    }
  }

  as(who: Who, preset: PresetTried): ApiClient {
    return found(this.clients.get(`${who}-${preset}`), `${who} is not signed in`);
  }

  airline(preset: PresetTried): Airline {
    return found(this.airlines.get(preset), 'the scene is not open');
  }

  aircraft(preset: PresetTried, mark: string): string {
    return found(this.airline(preset).aircraft[mark], `there is no ${mark}`);
  }

  /** Written up and deferred at once on row 1 of its entry. */
  async deferred(preset: PresetTried, mark: string, number: string): Promise<string> {
    const technician = this.as('technician', preset);
    const { body } = await technician.post<Shapes['ActDone']>('/api/defects', {
      aircraft: this.aircraft(preset, mark),
      origin: 'crew',
      description: 'Light does not come on.',
      recordedAt: this.clock,
      item: { entry: number, units: ['1'] },
    });
    await technician.sign(body.defect.id, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
    return body.defect.id;
  }

  async ask(preset: PresetTried, defect: string, over: object = {}) {
    const asking = this.as('engineer', preset);
    const ifMatch = await asking.seen(defect);
    const body = { ...REQUEST, ...over };
    return asking.post<Shapes['ExtensionDone']>(`/api/defects/${defect}/extension-request`, body, { ifMatch });
  }

  async askRefused(preset: PresetTried, defect: string, over: object = {}) {
    const asking = this.as('engineer', preset);
    const ifMatch = await asking.seen(defect);
    const body = { ...REQUEST, ...over };
    return asking.refused('POST', `/api/defects/${defect}/extension-request`, { body, ifMatch });
  }

  grant(preset: PresetTried, defect: string): Promise<Shapes['ActDone']> {
    return this.as('granter', preset).sign(defect, 'extension', { act: 'extend' });
  }

  offer(preset: PresetTried, defect: string): Promise<Shapes['ExtensionOffer']> {
    return this.as('engineer', preset).get(`/api/defects/${defect}/extension`);
  }

  register(preset: PresetTried): Promise<Shapes['ExtensionRegister']> {
    return this.as('control', preset).get('/api/extensions');
  }

  async granted(preset: PresetTried): Promise<Shapes['ExtensionLine']> {
    const { extensions } = await this.register(preset);
    return found(
      extensions.find(({ state }) => state === 'granted'),
      'nothing was granted',
    );
  }

  async lastDayOf(preset: PresetTried, defect: string): Promise<string | null | undefined> {
    const view = await this.as('control', preset).get<Shapes['DefectView']>(`/api/defects/${defect}`);
    return view.defect.deadline?.lastDay;
  }
}

function found<T>(value: T | undefined, otherwise: string): T {
  if (value === undefined) throw new Error(otherwise);
  return value;
}
