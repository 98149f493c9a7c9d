/** An operator under easa whose settings are changed: its people, two aircraft, a flight over midnight, three items. */
import type { ApiClient, Problem, Shapes } from '../support/api-client.js';
import { plainList } from '../support/plain-list.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { type Airline, anAirline } from './an-airline.js';

const MEL = plainList('Operator QPS', [
  { number: '33-11-01', category: 'B' },
  { number: '33-11-02', category: 'D' },
  { number: '33-11-03', category: 'A', interval: '6 flight-hours' },
  { number: '33-11-04', category: 'B', units: ['1', '2'] },
]);

/** One change as it is sent. */
export const change = (key: string, value: unknown, reason = 'MEL preamble, revision 7') => ({ key, value, reason });

export class SettingsScene {
  clock = '2026-01-19T22:30:00.000Z';
  server!: RunningServer;
  airline!: Airline;
  quality!: ApiClient;
  technician!: ApiClient;

  async open(): Promise<void> {
    this.server = await runningServer({ now: () => this.clock });
    this.airline = await anAirline(this.server, {
      code: 'QPS',
      base: 'UTC',
      aircraftType: 'Ambrel',
      settings: { preset: 'easa', extensionProcedure: 'OM-A 8.6.1', combinationNeedsAcceptance: false },
      people: [
        { signIn: 'wenka', name: 'Wenka Drost', roles: ['quality'] },
        { signIn: 'ullo', name: 'Ullo Fenn', roles: ['administrator', 'mel-engineer'] },
        {
          signIn: 'yorvin',
          name: 'Yorvin Tesk',
          roles: ['technician'],
          privileges: ['write-up', 'defer', 'sign-procedure', 'release'],
        },
      ],
      aircraft: ['Q-ABA', 'Q-ABB'],
      flights: [
        {
          number: 'over midnight',
          aircraft: 'Q-ABA',
          offBlockAt: '2026-01-22T23:00:00Z',
          onBlockAt: '2026-01-23T01:00:00Z',
        },
      ],
    });
    await (await this.server.signIn('ullo')).post('/api/mel', { file: 'ambrel.yaml', text: MEL });
    await this.goTo(this.clock);
  }

  /** A session lasts twelve hours: both sign in anew. */
  async goTo(at: string): Promise<void> {
    this.clock = at;
    this.quality = await this.server.signIn('wenka');
    this.technician = await this.server.signIn('yorvin');
  }

  view() {
    return this.quality.send<Shapes['SettingsView']>('GET', '/api/settings');
  }

  async setting(key: string): Promise<Shapes['SettingLine'] | undefined> {
    return (await this.view()).body.settings.find((one) => one.key === key);
  }

  async preview(...changes: object[]): Promise<Shapes['SettingsPreview']> {
    return (await this.quality.post<Shapes['SettingsPreview']>('/api/settings/preview', { changes })).body;
  }

  /** @param statement signs it */
  async put(changes: object[], statement: string | null = null, seen?: string) {
    const sign = statement === null ? {} : { sign: { secret: this.quality.secret, statement } };
    const sending = { body: { changes, ...sign }, ifMatch: seen ?? (await this.view()).etag };
    return this.quality.send<Shapes['SettingsView']>('PUT', '/api/settings', sending);
  }

  async refused(changes: unknown, client = this.quality, more: object = {}): Promise<Problem & { code: string }> {
    const ifMatch = (await this.view()).etag;
    return client.refused('PUT', '/api/settings', { body: { changes, ...more }, ifMatch });
  }

  /** Written up at this moment and deferred on row 1 of its entry. */
  async deferred(number: string, mark = 'Q-ABA', unit = '1'): Promise<Shapes['DefectLine']> {
    const { body } = await this.technician.post<Shapes['ActDone']>('/api/defects', {
      aircraft: this.airline.aircraft[mark],
      origin: 'crew',
      description: 'Light does not come on.',
      recordedAt: this.clock,
      item: { entry: number, units: [unit] },
    });
    const done = await this.technician.sign(body.defect.id, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
    return done.defect;
  }

  async deadline(defect: string): Promise<Shapes['DeadlineLine'] | null> {
    return (await this.technician.get<Shapes['DefectView']>(`/api/defects/${defect}`)).defect.deadline;
  }

  /** The answer about the flight over midnight, in words. */
  async answer(): Promise<string> {
    const { aircraft, flights } = this.airline;
    const address = `/api/aircraft/${aircraft['Q-ABA']}/answer?flight=${flights['over midnight']}`;
    return (await this.technician.get<Shapes['Verdict']>(address)).words;
  }
}
