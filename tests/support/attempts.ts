import type { ApiClient, Problem, Sending } from './api-client.js';
import { databaseDigest } from './database-digest.js';

/** How a request that must be refused was answered, and which tables it changed all the same. */
export interface Attempt {
  status: number;
  code: string;
  detail: string;
  /** JSON pointers to what is wrong. */
  at: string[];
  changed: string[];
  problem: Problem;
}

/** Tries what must be refused, and looks at the whole database after each try. */
export class Attempts {
  private constructor(
    private readonly adminUrl: string,
    private before: Record<string, string>,
  ) {}

  static async on(adminUrl: string): Promise<Attempts> {
    return new Attempts(adminUrl, await databaseDigest(adminUrl));
  }

  async refused(client: ApiClient, method: string, path: string, sending: Sending = {}): Promise<Attempt> {
    const problem = await client.refused(method, path, sending);
    const { status, code, detail, errors = [] } = problem;
    return { status, code, detail, at: errors.map(({ pointer }) => pointer), changed: await this.changed(), problem };
  }

  /** Names of the tables that are not as they were when this was last asked. */
  async changed(): Promise<string[]> {
    const after = await databaseDigest(this.adminUrl);
    const changed = Object.keys(after).filter((table) => after[table] !== this.before[table]);
    this.before = after;
    return changed;
  }
}
