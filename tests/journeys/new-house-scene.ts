/** A house that begins with nothing: its server, its command, and its people as they come. All of it invented. */
import { run } from '../../apps/cli/src/run.js';
import { ApiClient, type Shapes } from '../support/api-client.js';
import { type RunningOptions, runningServer, type RunningServer } from '../support/running-server.js';

const OWN = 'nine lanterns over a quiet harbour';

const ADD = {
  code: 'QNW',
  name: 'Newhouse Air',
  base: 'Europe/Paris',
  preset: 'easa',
  approval: 'QX-AOC-7',
  administrator: 'Ada Brenn',
  'sign-in': 'ada',
};

export class NewHouse {
  private readonly people = new Map<string, ApiClient>();

  private constructor(readonly server: RunningServer) {}

  /** An empty database and a server on it. */
  static async begin(options: Pick<RunningOptions, 'now'> = {}): Promise<NewHouse> {
    return new NewHouse(await runningServer(options));
  }

  proviso(...line: string[]) {
    return run([...line, '--database', this.server.ownerUrl]);
  }

  add(more: Partial<Record<keyof typeof ADD, string>> = {}) {
    const options = Object.entries({ ...ADD, ...more });
    return this.proviso('operator', 'add', ...options.flatMap(([name, value]) => [`--${name}`, value]));
  }

  /** Somebody who has begun. */
  as(name: string): ApiClient {
    const found = this.people.get(name);
    if (!found) throw new Error(`${name} has not begun`);
    return found;
  }

  client(secret: string): ApiClient {
    return new ApiClient(this.server.url, secret, this.server.contract);
  }

  /** Chooses an own secret in place of the first one, as its owner does. */
  async enter(name: string, first: string): Promise<ApiClient> {
    const secret = `${OWN} ${name}`;
    await (await this.client(first).signIn(name)).put('/api/session/secret', { secret: first, fresh: secret });
    const person = await this.client(secret).signIn(name);
    this.people.set(name, person);
    return person;
  }

  /** An account made by the first administrator, whose owner has begun. */
  async account(signInName: string, name: string, roles: string[], more: object = {}): Promise<string> {
    const asked = { name, signInName, roles, ...more };
    const { body } = await this.as('ada').post<Shapes['AccountMade']>('/api/people', asked);
    await this.enter(signInName, body.firstSecret ?? '');
    return body.person.id;
  }
}

/** The first secret as the command prints it; empty where it prints none. */
export function firstSecretIn(stdout: string): string {
  return /^ {4}(\S{23})$/m.exec(stdout)?.[1] ?? '';
}
