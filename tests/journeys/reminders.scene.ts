/** An operator whose engineers are reminded: a mail server, an endpoint, a clock that runs and can be put forward. */
import { vi } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { endpoint, type Endpoint } from '../support/endpoint.js';
import { mailServer, type MailServer } from '../support/mail-server.js';
import { plainList } from '../support/plain-list.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { type Airline, anAirline } from './an-airline.js';

export const MEL = (operator: string) =>
  plainList(operator, [
    { number: '33-11-01', title: 'Reading light 33-11-01', category: 'B' },
    { number: '33-11-02', title: 'Reading light 33-11-02', category: 'C' },
    { number: '33-11-03', title: 'Reading light 33-11-03', category: 'A', interval: '4 flights' },
  ]);

export const FROM = 'Proviso <reminders@proviso.example>';
/** Not in the database: whoever restores it names them again. */
export const SECRET_KEYS = [Buffer.alloc(32, 7)];
export const PATIENT = { interval: 30, timeout: 30_000 };

export class RemindersScene {
  private set = Date.parse('2026-01-26T10:00:00.000Z');
  private since = Date.now();
  mail!: MailServer;
  endpoint!: Endpoint;
  server!: RunningServer;
  airline!: Airline;
  /** Who adds addresses, who defers, who administers. */
  engineer!: ApiClient;
  technician!: ApiClient;
  administrator!: ApiClient;

  now = (): string => new Date(this.set + Date.now() - this.since).toISOString();

  async open(): Promise<void> {
    this.mail = await mailServer();
    this.endpoint = await endpoint();
    this.server = await runningServer({
      now: this.now,
      watch: {
        mail: { url: this.mail.url, from: FROM },
        endpointsInside: true,
        secretKeys: SECRET_KEYS,
        lookEverySeconds: 1,
        firstPauseSeconds: 1,
        everyMs: 30,
      },
    });
    this.airline = await anAirline(this.server, {
      code: 'QPR',
      base: 'UTC',
      aircraftType: 'Ambrel',
      settings: { preset: 'easa', combinationNeedsAcceptance: false },
      people: [
        { signIn: 'sorra', name: 'Sorra Vey', roles: ['engineer'] },
        { signIn: 'ullo', name: 'Ullo Fenn', roles: ['administrator', 'mel-engineer', 'quality'] },
        {
          signIn: 'yorvin',
          name: 'Yorvin Tesk',
          roles: ['technician'],
          privileges: ['write-up', 'defer', 'sign-procedure', 'release'],
        },
      ],
      aircraft: ['Q-ABA', 'Q-ABB', 'Q-ABC'],
    });
    await this.signIn();
    await this.administrator.post('/api/mel', { file: 'ambrel.yaml', text: MEL('Operator QPR') });
  }

  async close(): Promise<void> {
    await this.server.stop();
    await this.endpoint.stop();
    await this.mail.stop();
  }

  /** Puts the clock forward; everybody signs in anew. */
  async goTo(at: string): Promise<void> {
    this.set = Date.parse(at);
    this.since = Date.now();
    await this.signIn();
  }

  private async signIn(): Promise<void> {
    this.engineer = await this.server.signIn('sorra');
    this.technician = await this.server.signIn('yorvin');
    this.administrator = await this.server.signIn('ullo');
  }

  async add(
    kind: 'email' | 'webhook',
    address: string,
    more: object = {},
    by = this.engineer,
  ): Promise<Shapes['ReminderAddressEntered']> {
    const body = { kind, address, label: 'test', ...more };
    const entered = (await by.post<Shapes['ReminderAddressEntered']>('/api/reminder-addresses', body)).body;
    if (kind === 'email') await this.confirm(entered.address.id, address, by);
    return entered;
  }

  /** As its owner does, who reads the code in the mail. */
  async confirm(id: string, address: string, by = this.engineer): Promise<void> {
    const code = await this.codeSentTo(address);
    await by.post(`/api/reminder-addresses/${id}/confirmation`, { code });
  }

  /** Takes the mail away, so that reminders alone are left. */
  async codeSentTo(address: string): Promise<string> {
    const isIt = ({ mail, to }: MailServer['arrived'][number]) =>
      mail.subject === 'Code for reminders' && to.includes(address);
    const at = await vi.waitFor(() => {
      const found = this.mail.arrived.findIndex(isIt);
      if (found < 0) throw new Error(`No code came to ${address}.`);
      return found;
    }, PATIENT);
    const [found] = this.mail.arrived.splice(at, 1);
    return /\d{4} \d{4}/.exec(found?.mail.text ?? '')?.[0] ?? 'no code';
  }

  view(by = this.engineer): Promise<Shapes['Reminders']> {
    return by.get('/api/reminders');
  }

  /** Those of one item, the newest first. */
  async remindersOf(defect: string, by = this.engineer): Promise<Shapes['Reminder'][]> {
    return (await this.view(by)).reminders.filter((one) => one.defect === defect);
  }

  /** Written up now and deferred on row 1 of an entry. */
  async deferred(mark: string, number: string): Promise<Shapes['DefectLine']> {
    const { body } = await this.technician.post<Shapes['ActDone']>('/api/defects', {
      aircraft: this.airline.aircraft[mark],
      origin: 'crew',
      description: 'Light does not come on.',
      recordedAt: this.now(),
      item: { entry: number, units: ['1'] },
    });
    const done = await this.technician.sign(body.defect.id, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
    return done.defect;
  }

  /** Planned flights that were flown, an hour each. */
  async flown(mark: string, ...offBlocks: string[]): Promise<void> {
    const aircraftId = this.airline.aircraft[mark] ?? '';
    await this.server.store.withOperator(this.airline.operator, null, async (tx) => {
      for (const offBlockAt of offBlocks) {
        const onBlockAt = new Date(Date.parse(offBlockAt) + 3_600_000).toISOString();
        const between = { fromStation: 'QWA', toStation: 'QWB', offBlockAt, onBlockAt, flightMinutes: 50 };
        await tx.flights.add({
          aircraftId,
          number: `QPR ${offBlockAt.slice(11, 13)}`,
          ...between,
          state: 'flown',
          facts: {},
        });
      }
    });
  }

  async closed(defect: string): Promise<void> {
    const work = { workDone: 'Lamp replaced.', reference: 'AMM 33-11', complete: true };
    const asked = { testAsked: false, inspectionAsked: false };
    await this.technician.sign(defect, 'rectification', { act: 'rectify' }, { ...work, ...asked });
    const all = { toolsAccounted: true, panelsClosed: true, registerChecked: true };
    await this.technician.sign(defect, 'verification', { act: 'verify' }, all);
    await this.technician.sign(defect, 'release', { act: 'release' });
  }
}
