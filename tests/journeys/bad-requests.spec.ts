/** Requests that no honest client sends: refused with a problem that says what and where, and nothing is changed by them. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Sending, Shapes } from '../support/api-client.js';
import { Attempts } from '../support/attempts.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

const clock = '2026-01-15T12:12:00.000Z';
let server: RunningServer;
let technician: ApiClient;
let aircraft: string;
let defect: string;
let attempts: Attempts;

const writeUp = (changes: object = {}): object => ({
  aircraft,
  origin: 'technician',
  description: 'Left landing light out.',
  recordedAt: '2026-01-15T12:00:00Z',
  ...changes,
});
/** The same as raw text with one more member, for what JSON.stringify would not write. */
const withRaw = (member: string): string => `${JSON.stringify(writeUp()).slice(0, -1)},${member}}`;
const deep = (levels: number): string => `${'['.repeat(levels)}${']'.repeat(levels)}`;

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  technician = await server.signIn('odrin');
  const { aircraft: fleet } = await technician.get<Shapes['Fleet']>('/api/fleet');
  aircraft = fleet[0]?.id ?? '';
  const { defects } = await technician.get<Shapes['DefectList']>('/api/defects');
  defect = defects.find(({ number }) => number === 'Q-KEB/1')?.id ?? '';
  attempts = await Attempts.on(server.database.adminUrl);
});

afterAll(() => server.stop());

interface Case {
  says: string;
  send: () => Sending;
  status: number;
  code: string;
  /** Where, as a JSON pointer; absent where the whole request is meant. */
  at?: string;
}

const bodies: Case[] = [
  { says: 'no body at all', send: () => ({}), status: 422, code: 'invalid-input' },
  ...['[]', 'null', '7', '"x"', 'true'].map((body): Case => ({
    says: `a body ${body}`,
    send: () => ({ body }),
    status: 422,
    code: 'invalid-input',
    at: '',
  })),
  ...['[]', 'null', '7', '[{"entry": "33-42-11", "units": ["L"]}]'].map((item): Case => ({
    says: `an item ${item}`,
    send: () => ({ body: withRaw(`"item": ${item}`) }),
    status: 422,
    code: 'invalid-input',
    at: '/item',
  })),
  {
    says: 'null for a sheet that may be absent',
    send: () => ({ body: writeUp({ sheet: null }) }),
    status: 422,
    code: 'invalid-input',
    at: '/sheet',
  },
  { says: 'JSON that breaks off', send: () => ({ body: '{"aircraft": ' }), status: 400, code: 'unreadable-body' },
  { says: 'an empty JSON body', send: () => ({ body: '' }), status: 400, code: 'unreadable-body' },
  {
    says: 'a member __proto__',
    send: () => ({ body: withRaw('"__proto__": {"admin": true}') }),
    status: 400,
    code: 'unreadable-body',
  },
  {
    says: 'a member constructor.prototype',
    send: () => ({ body: withRaw('"constructor": {"prototype": {"admin": true}}') }),
    status: 400,
    code: 'unreadable-body',
  },
  {
    says: 'a member that no shape knows',
    send: () => ({ body: writeUp({ colour: 'red' }) }),
    status: 422,
    code: 'invalid-input',
    at: '/colour',
  },
  {
    says: 'a member that no shape knows inside another',
    send: () => ({ body: writeUp({ item: { entry: '33-42-11', units: ['L'], row: '1' } }) }),
    status: 422,
    code: 'invalid-input',
    at: '/item/row',
  },
  {
    says: 'lists nested 20,000 deep',
    send: () => ({ body: withRaw(`"item": ${deep(20_000)}`) }),
    status: 422,
    code: 'invalid-input',
  },
  {
    says: 'a description of one megabyte',
    send: () => ({ body: writeUp({ description: 'x'.repeat(1_000_000) }) }),
    status: 413,
    code: 'body-too-large',
  },
  {
    says: 'a description one character too long',
    send: () => ({ body: writeUp({ description: 'x'.repeat(4001) }) }),
    status: 422,
    code: 'invalid-input',
    at: '/description',
  },
  {
    says: 'a blank description',
    send: () => ({ body: writeUp({ description: ' \n ' }) }),
    status: 422,
    code: 'invalid-input',
    at: '/description',
  },
  {
    says: 'a description that is no text',
    send: () => ({ body: writeUp({ description: ['out'] }) }),
    status: 422,
    code: 'invalid-input',
    at: '/description',
  },
  {
    says: 'U+0000 in a text',
    send: () => ({ body: writeUp({ description: 'light\u0000out' }) }),
    status: 422,
    code: 'invalid-input',
    at: '/description',
  },
  {
    says: 'half of a surrogate pair in a text',
    send: () => ({ body: writeUp({ item: { entry: '33-42-11', units: ['\ud83d'] } }) }),
    status: 422,
    code: 'invalid-input',
    at: '/item/units/0',
  },
  {
    says: 'U+0000 in the name of a member',
    send: () => ({ body: withRaw('"a\\u0000b": 1') }),
    status: 422,
    code: 'invalid-input',
  },
];

const headers: Case[] = [
  ...['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', 'application/xml'].map(
    (type): Case => ({
      says: `a body called ${type}`,
      send: () => ({ body: writeUp(), headers: { 'content-type': type } }),
      status: 415,
      code: 'unsupported-media-type',
    }),
  ),
  {
    says: 'no Idempotency-Key',
    send: () => ({ body: writeUp(), key: null }),
    status: 400,
    code: 'idempotency-key-missing',
  },
  ...['short', 'with space in it', 'x'.repeat(101), 'quote"inside'].map((key): Case => ({
    says: `an Idempotency-Key "${key.slice(0, 20)}"`,
    send: () => ({ body: writeUp(), key }),
    status: 400,
    code: 'idempotency-key-missing',
  })),
  ...['https://elsewhere.example', 'null', 'http://127.0.0.1:1', 'nonsense'].map((origin): Case => ({
    says: `Origin ${origin}`,
    send: () => ({ body: writeUp(), headers: { origin } }),
    status: 403,
    code: 'foreign-origin',
  })),
];

describe('a write-up is refused with', () => {
  it.each([...bodies, ...headers].map((one) => [one.says, one] as const))('%s', async (_says, one) => {
    const { status, code, at } = one;
    const attempt = await attempts.refused(technician, 'POST', '/api/defects', one.send());
    expect(attempt, attempt.detail).toMatchObject({ status, code, changed: [] });
    expect(attempt.detail).not.toBe('');
    if (at !== undefined) expect(attempt.at).toContain(at);
  });
});

describe('an act on a defect is refused with', () => {
  const acts: [string, Sending, number, string][] = [
    ['no If-Match', {}, 428, 'precondition-required'],
    ['an older ETag', { ifMatch: '"1"' }, 412, 'changed-meanwhile'],
    ['a newer ETag', { ifMatch: '"999"' }, 412, 'changed-meanwhile'],
    ['a weak ETag', { ifMatch: 'W/"2"' }, 412, 'changed-meanwhile'],
    ['a star for an ETag', { ifMatch: '*' }, 412, 'changed-meanwhile'],
    ['a number without quotes for an ETag', { ifMatch: '2' }, 412, 'changed-meanwhile'],
  ];

  it.each(acts)('%s', async (_says, sending, status, code) => {
    expect(await technician.seen(defect)).toBe('"2"');
    const body = { entry: '73-33-11', units: ['1'] };
    const path = `/api/defects/${defect}/identification`;
    const attempt = await attempts.refused(technician, 'POST', path, { ...sending, body });
    expect(attempt).toMatchObject({ status, code, changed: [] });
  });
});

describe('an address', () => {
  const someId = '00000000-0000-4000-8000-000000000000';
  const wrong: [string, string, number, string][] = [
    ['PATCH', '/api/defects', 404, 'not-found'],
    ['DELETE', `/api/defects/${someId}`, 404, 'not-found'],
    ['PUT', '/api/fleet', 404, 'not-found'],
    ['POST', '/api/fleet', 404, 'not-found'],
    ['GET', '/api/nothing-here', 404, 'not-found'],
    ['GET', '/api/problems/no-such-code', 404, 'not-found'],
    ['GET', '/api/problems/..%2f..%2fetc', 404, 'not-found'],
    ['GET', '/api/aircraft/Q-KEA', 404, 'not-found'],
    ['GET', `/api/aircraft/${someId}`, 404, 'not-found'],
    ['GET', `/api/aircraft/${someId}/answer`, 404, 'not-found'],
    ['GET', `/api/aircraft/${someId}/entries?q=light`, 404, 'not-found'],
    ['GET', '/api/defects/1', 404, 'not-found'],
    ['GET', `/api/defects/${someId}`, 404, 'not-found'],
    ['GET', `/api/defects/${someId}/statement?act=release`, 404, 'not-found'],
    ['GET', `/api/record?aircraft=${someId}`, 404, 'not-found'],
    ['GET', '/api/record', 422, 'invalid-input'],
    ['GET', '/api/record?aircraft=x', 422, 'invalid-input'],
  ];

  it.each(wrong)('%s %s answers %i', async (method, path, status, code) => {
    expect(await attempts.refused(technician, method, path)).toMatchObject({ status, code, changed: [] });
  });

  it('checks its query: missing, doubled, too long, unknown, of the wrong kind', async () => {
    const of = `/api/aircraft/${aircraft}`;
    const paths = [
      `${of}/entries`,
      `${of}/entries?q=a&q=b`,
      `${of}/entries?q=${'x'.repeat(201)}`,
      `${of}/entries?q=light&colour=red`,
      `${of}/answer?flight=QOF 109`,
      `/api/defects/${defect}/statement?act=fly`,
      `/api/defects/${defect}/statement`,
    ];
    for (const path of paths) {
      const attempt = await attempts.refused(technician, 'GET', path);
      expect(attempt, path).toMatchObject({ status: 422, code: 'invalid-input', changed: [] });
      expect(attempt.at[0], path).toMatch(/^\/(q|colour|flight|act)$/);
    }
  });

  it('that is not open answers nobody who is not signed in, nor a token made up', async () => {
    const visitor = server.visitor();
    for (const path of ['/api/fleet', `/api/defects/${defect}`, '/api/mel', '/api/record/head', '/api/session']) {
      expect(await visitor.refused('GET', path)).toMatchObject({ status: 401, code: 'not-signed-in' });
    }
    visitor.cookie = `proviso_session=${'a'.repeat(43)}`;
    expect(await visitor.refused('GET', '/api/fleet')).toMatchObject({ status: 401, code: 'not-signed-in' });
  });
});

describe('what is right is done', () => {
  it('a request from our own pages carries our own Origin and is taken', async () => {
    const answer = await technician.post<Shapes['Verdict']>(
      '/api/dispatch/questions',
      { aircraft, propose: [] },
      { headers: { origin: server.url } },
    );
    expect(answer.body.verdict).toBe('nothing-open');
  });

  it('HTML in a text is text: kept and given back as it was written, and never called anything but JSON', async () => {
    const description = '<script>alert(1)</script> & <img src=x onerror="alert(2)"> \u2028 \ud83d\udee9';
    const done = await technician.post<Shapes['ActDone']>('/api/defects', writeUp({ description }));
    const { body, headers: sent } = await technician.send<Shapes['DefectView']>(
      'GET',
      `/api/defects/${done.body.defect.id}`,
    );
    expect(body.defect.description).toBe(description);
    expect(sent.get('content-type')).toBe('application/json; charset=utf-8');
    expect(sent.get('x-content-type-options')).toBe('nosniff');
    expect(await attempts.changed()).toEqual(
      expect.arrayContaining(['defect', 'defect_act', 'idempotency', 'record_entry', 'record_sealed']),
    );
  });
});
