/** A defect at the gate, its people, and what a reader of the database sees of their signatures. */
import type { ApiClient, Shapes } from '../support/api-client.js';
import { type RunningOptions, runningServer, type RunningServer } from '../support/running-server.js';
import { withClient } from '../support/with-client.js';

export const BASIS = 'FAA AC 120-78B (2024-12-11); EASA AMC M.A.305(e), AMC M.A.614(a); 145.A.48, 145.A.50';

/** What was done, in the words of somebody who signs it. */
export const WORK = {
  workDone: 'Lamp replaced.',
  reference: 'K-AMM 33-42-11 task 1, revision 12',
  complete: true,
  testAsked: false,
  inspectionAsked: false,
};

export class SignatureScene {
  private constructor(
    readonly server: RunningServer,
    readonly people: Readonly<Record<string, ApiClient>>,
    private readonly now: () => string,
  ) {}

  static async begin(
    now: () => string,
    names: readonly string[],
    outside: RunningOptions['outside'] = {},
  ): Promise<SignatureScene> {
    const server = await runningServer({ now, demo: true, outside });
    const people: Record<string, ApiClient> = {};
    for (const name of names) people[name] = await server.signIn(name);
    return new SignatureScene(server, people, now);
  }

  person(name: string): ApiClient {
    const found = this.people[name];
    if (!found) throw new Error(`${name} is not signed in.`);
    return found;
  }

  /** A landing light out, written up by odrin on an aircraft of the demo. @returns the id of the defect */
  async written(registration = 'Q-KEA'): Promise<string> {
    const { aircraft } = await this.person('odrin').get<Shapes['Fleet']>('/api/fleet');
    const plane = aircraft.find((one) => one.registration === registration);
    const body = {
      aircraft: plane?.id,
      origin: 'technician',
      description: 'Left landing light out.',
      recordedAt: this.now(),
      item: { entry: '33-42-11', units: ['L'] },
    };
    return (await this.person('odrin').post<Shapes['ActDone']>('/api/defects', body)).body.defect.id;
  }

  rectify(name: string, defect: string, changes: object = {}): Promise<Shapes['ActDone']> {
    return this.person(name).sign(defect, 'rectification', { act: 'rectify' }, { ...WORK, ...changes });
  }

  async newest(name: string): Promise<Shapes['SignatureView']> {
    const { signatures } = await this.person(name).get<Shapes['Signatures']>('/api/signatures');
    const [first] = signatures;
    if (!first) throw new Error(`${name} has signed nothing.`);
    return first;
  }

  /** As the application's own role, for the operator of a person. @returns the code of the refusal, or how many rows */
  async asServer(sql: string, values: unknown[] = []): Promise<string | number> {
    const { operator, person } = await this.person('odrin').get<Shapes['SessionView']>('/api/session');
    return withClient(this.server.database.appUrl, async (client) => {
      await client.query('begin');
      await client.query("select set_config('app.operator', $1, true), set_config('app.person', $2, true)", [
        operator?.id,
        person.id,
      ]);
      const answer = client.query(sql, values).then(({ rowCount }) => rowCount ?? 0);
      return answer.catch((error: { code: string }) => error.code);
    });
  }

  /** As the role that owns the tables, who is bound by their guards too. */
  async asOwner(sql: string): Promise<void> {
    await withClient(this.server.database.adminUrl, async (client) => void (await client.query(sql)));
  }

  async row(sql: string): Promise<Record<string, unknown>> {
    return withClient(this.server.database.adminUrl, async (client) => {
      const { rows } = await client.query<Record<string, unknown>>(sql);
      return rows[0] ?? {};
    });
  }

  /** What nobody can do from outside: rows altered with every guard switched off. */
  async tamper(sql: string, values: unknown[]): Promise<void> {
    await withClient(this.server.database.adminUrl, async (client) => {
      await client.query('set session_replication_role = replica');
      const { rowCount } = await client.query(sql, values);
      if (rowCount !== 1) throw new Error(`${rowCount} rows were altered.`);
    });
  }

  async count(table: string): Promise<number> {
    return withClient(this.server.database.adminUrl, async (client) => {
      const { rows } = await client.query<{ n: number }>(`select count(*)::int as n from ${table}`);
      return rows[0]?.n ?? -1;
    });
  }
}
