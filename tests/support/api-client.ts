/** One person at one client: keeps the session's cookie, sends what an honest client sends, checks what comes back. */
import { randomUUID } from 'node:crypto';
import type { components } from '../../apps/web/src/api/openapi.generated.js';
import type { Contract } from './contract.js';

export type Shapes = components['schemas'];

/** A problem as it is answered: the documented part, and what else it carries. */
export type Problem = Shapes['Problem'] & Record<string, unknown>;

export interface Answer<Body = unknown> {
  status: number;
  headers: Headers;
  etag: string | null;
  body: Body;
}

export interface Sending {
  /** Sent as JSON; a text is sent as it is. */
  body?: unknown;
  /** Idempotency-Key; null sends none, absent sends a fresh one with every unsafe request. */
  key?: string | null;
  ifMatch?: string | null;
  headers?: Record<string, string>;
}

export class ApiClient {
  private readonly cookies = new Map<string, string>();

  constructor(
    readonly url: string,
    readonly secret: string,
    private readonly contract: Contract | null = null,
  ) {}

  /** Sends as told and gives back whatever was answered. @throws Error when the answer breaks the contract */
  async send<Body = unknown>(method: string, path: string, sending: Sending = {}): Promise<Answer<Body>> {
    const response = await fetch(`${this.url}${path}`, {
      method,
      headers: this.headersOf(method, sending),
      ...(sending.body === undefined ? {} : { body: textOf(sending.body) }),
    });
    this.keepCookies(response);
    const text = await response.text();
    const contentType = response.headers.get('content-type') ?? '';
    const body = text !== '' && contentType.includes('json') ? (JSON.parse(text) as unknown) : undefined;
    const { status, headers } = response;
    const seen = { method, path: path.split('?')[0] ?? path, status, contentType, body };
    const misfits = this.contract?.misfits(seen) ?? [];
    if (misfits.length > 0) throw new Error(`${method} ${path} ${status} breaks the contract: ${misfits.join('; ')}`);
    return { status, headers, etag: headers.get('etag'), body: body as Body };
  }

  /** Reads what is made for people and not for programs: a document to print, the page of the interface. */
  async page(path: string, headers: Record<string, string> = {}, redirect: 'follow' | 'manual' = 'follow') {
    const response = await fetch(`${this.url}${path}`, { headers: this.headersOf('GET', { headers }), redirect });
    this.keepCookies(response);
    return response;
  }

  async get<Body>(path: string): Promise<Body> {
    return (await this.done<Body>('GET', path)).body;
  }

  post<Body>(path: string, body: unknown, sending: Sending = {}): Promise<Answer<Body>> {
    return this.done('POST', path, { ...sending, body });
  }

  put<Body>(path: string, body: unknown, sending: Sending = {}): Promise<Answer<Body>> {
    return this.done('PUT', path, { ...sending, body });
  }

  /** Expects a refusal. @returns its problem @throws Error when it was done instead */
  async refused(method: string, path: string, sending: Sending = {}): Promise<Problem & { code: string }> {
    const { status, body } = await this.send<Problem>(method, path, sending);
    if (status < 400) throw new Error(`${method} ${path} was done (${status}) and not refused`);
    return { ...body, code: body.type.replace('/api/problems/', '') };
  }

  /** Signs in; a second argument chooses one of several operators by its code. */
  async signIn(name: string, operatorCode?: string): Promise<this> {
    await this.post('/api/session', { name, secret: this.secret });
    if (operatorCode !== undefined) {
      const { operators } = await this.get<Shapes['SessionView']>('/api/session');
      const operator = operators.find(({ code }) => code === operatorCode);
      await this.put('/api/session/operator', { operator: operator?.id });
    }
    return this;
  }

  /** The ETag of a defect as it stands. */
  async seen(defect: string): Promise<string> {
    const { etag } = await this.done('GET', `/api/defects/${defect}`);
    if (etag === null) throw new Error(`Defect ${defect} has no ETag.`);
    return etag;
  }

  /** The signature under an act: the statement as the server shows it, and the secret entered again. */
  async signature(defect: string, query: Record<string, string>): Promise<{ secret: string; statement: string }> {
    const asked = new URLSearchParams(query).toString();
    const { statement } = await this.get<Shapes['Statement']>(`/api/defects/${defect}/statement?${asked}`);
    return { secret: this.secret, statement };
  }

  /**
   * One signed act on a defect as the pages do it: reads the item and the statement, then signs.
   * @param query what the statement is asked for, `act` first
   */
  async sign(
    defect: string,
    address: string,
    query: Record<string, string>,
    body: object = {},
  ): Promise<Shapes['ActDone']> {
    const answer = await this.post<Shapes['ActDone']>(
      `/api/defects/${defect}/${address}`,
      ...(await this.signing(defect, query, body)),
    );
    return answer.body;
  }

  /** The same, expected to be refused. */
  async signRefused(defect: string, address: string, query: Record<string, string>, body: object = {}) {
    const [signed, sending] = await this.signing(defect, query, body);
    return this.refused('POST', `/api/defects/${defect}/${address}`, { ...sending, body: signed });
  }

  get cookie(): string {
    return [...this.cookies].map(([name, value]) => `${name}=${value}`).join('; ');
  }

  /** The session's token; setting it is what a thief would do. */
  set cookie(text: string) {
    this.cookies.clear();
    for (const [, name, value] of text.matchAll(/([^=; ]+)=([^;]*)/g)) this.cookies.set(name ?? '', value ?? '');
  }

  private async signing(defect: string, query: Record<string, string>, body: object): Promise<[object, Sending]> {
    const ifMatch = await this.seen(defect);
    const asked = { ...startAsked(body), ...query };
    return [{ ...body, sign: await this.signature(defect, asked) }, { ifMatch }];
  }

  private async done<Body>(method: string, path: string, sending: Sending = {}): Promise<Answer<Body>> {
    const answer = await this.send<Body>(method, path, sending);
    if (answer.status < 400) return answer;
    throw new Error(`${method} ${path} was refused: ${JSON.stringify(answer.body)}`);
  }

  private headersOf(method: string, { body, key, ifMatch, headers }: Sending): Record<string, string> {
    const unsafe = method !== 'GET' && method !== 'HEAD';
    return {
      ...(this.cookies.size === 0 ? {} : { cookie: this.cookie }),
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      ...(!unsafe || key === null ? {} : { 'idempotency-key': key ?? randomUUID() }),
      ...(ifMatch ? { 'if-match': ifMatch } : {}),
      ...headers,
    };
  }

  private keepCookies(response: Response): void {
    for (const line of response.headers.getSetCookie()) {
      const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(line) ?? [];
      if (value === '') this.cookies.delete(name);
      else this.cookies.set(name, value);
    }
  }
}

function textOf(body: unknown): string {
  return typeof body === 'string' ? body : JSON.stringify(body);
}

/** A stated start stands in the statement, so it is asked for with it. */
function startAsked({ start = {} }: { start?: Record<string, unknown> }): Record<string, string> {
  if (String(start['document'] ?? '').trim() === '') return {};
  return Object.fromEntries(
    Object.entries(start).map(([key, value]) => [
      `start${key.charAt(0).toUpperCase()}${key.slice(1)}`,
      String(value),
    ]),
  );
}
