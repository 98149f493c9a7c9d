/** Work cards on the aircraft of the demo, and how they are worked through the interface. */
import type { ApiClient, Shapes } from '../support/api-client.js';
import type { RunningOptions } from '../support/running-server.js';
import { SignatureScene } from './signatures-scene.js';

export const act = async (by: ApiClient, defect: string, address: string, body: object): Promise<void> => {
  await by.post(`/api/defects/${defect}/${address}`, body, { ifMatch: await by.seen(defect) });
};

export const refused = async (by: ApiClient, defect: string, address: string, body: object) =>
  by.refused('POST', `/api/defects/${defect}/${address}`, { body, ifMatch: await by.seen(defect) });

/** People of the demo, a clock that the test moves, and the filter card. */
export class CardsScene {
  private constructor(
    readonly scene: SignatureScene,
    readonly ids: Readonly<Record<string, string>>,
    private readonly clock: Clock,
  ) {}

  static async begin(
    start: string,
    names: readonly string[],
    outside: RunningOptions['outside'] = {},
  ): Promise<CardsScene> {
    const clock = new Clock(Date.parse(start));
    const scene = await SignatureScene.begin(() => clock.now(), names, outside);
    const ids: Record<string, string> = {};
    for (const name of names) {
      ids[name] = (await scene.person(name).get<Shapes['SessionView']>('/api/session')).person.id;
    }
    return new CardsScene(scene, ids, clock);
  }

  readonly now = (): string => this.clock.now();
  readonly pass = (minutes: number): void => this.clock.pass(minutes);

  person(name: string): ApiClient {
    return this.scene.person(name);
  }

  /** A leak at the pump on its own aircraft, and the filter card started for it. */
  async started(registration: string, name = 'odrin'): Promise<{ defect: string; work: string }> {
    const { aircraft } = await this.person('odrin').get<Shapes['Fleet']>('/api/fleet');
    const written = await this.person('odrin').post<Shapes['ActDone']>('/api/defects', {
      aircraft: aircraft.find((one) => one.registration === registration)?.id,
      origin: 'technician',
      description: 'Case-drain filter indicator is out.',
      recordedAt: this.now(),
      item: { entry: '29-13-11', units: ['1'] },
    });
    const defect = written.body.defect.id;
    const by = this.person(name);
    await act(by, defect, 'cards', { card: 'case-drain-filter' });
    const { works } = await by.get<Shapes['CardsOfDefect']>(`/api/defects/${defect}/cards`);
    return { defect, work: works[0]?.id ?? '' };
  }

  stop(): Promise<void> {
    return this.scene.server.stop();
  }
}

class Clock {
  constructor(private at: number) {}

  now(): string {
    return new Date((this.at += 50)).toISOString();
  }

  pass(minutes: number): void {
    this.at += minutes * 60_000;
  }
}
