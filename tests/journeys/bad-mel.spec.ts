/** A file that is no MEL loads nothing, and every error is named with entry, place and reason. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { type Attempt, Attempts } from '../support/attempts.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

const good = readFileSync(fileURLToPath(new URL('../../seed/mel.yaml', import.meta.url)), 'utf8');
let server: RunningServer;
let engineer: ApiClient;
let attempts: Attempts;

interface Content {
  revision: string;
  entries: { number: string; subEntries: { rows: Record<string, unknown>[] }[] }[];
}

/** The demo's own list with one place spoilt. */
function spoilt(spoil: (content: Content) => void): string {
  const content = parse(good) as Content;
  spoil(content);
  return stringify(content);
}

const firstRow = (content: Content): Record<string, unknown> =>
  content.entries[0]?.subEntries[0]?.rows[0] as Record<string, unknown>;

const load = (text: string, file = 'spoilt.yaml'): Promise<Attempt> =>
  attempts.refused(engineer, 'POST', '/api/mel', { body: { file, text } });

beforeAll(async () => {
  server = await runningServer({ now: () => '2026-01-15T12:12:00.000Z', demo: true });
  engineer = await server.signIn('mabbet');
  attempts = await Attempts.on(server.database.adminUrl);
});

afterAll(() => server.stop());

describe('a file is refused', () => {
  it('when its YAML is broken, with the line', async () => {
    const attempt = await load('format: proviso-mel/1\nentries:\n  - number: "32\n');
    expect(attempt).toMatchObject({ status: 422, code: 'invalid-input', changed: [] });
    expect(attempt.detail).toMatch(/line [34]/);
  });

  it('when a row breaks the schema, naming entry, place and reason of each', async () => {
    const attempt = await load(
      spoilt((content) => {
        firstRow(content)['category'] = 'E';
        firstRow(content)['numberRequired'] = -1;
      }),
    );
    expect(attempt).toMatchObject({ status: 422, changed: [] });
    const errors = attempt.problem.errors as { pointer: string; reason: string; entry?: string }[];
    expect(errors.filter(({ pointer }) => /category|numberRequired/.test(pointer))).toHaveLength(2);
    expect(errors.every(({ reason, entry }) => reason !== '' && entry === '21-21-11')).toBe(true);
  });

  it.each([
    [
      'a condition that needs less to be up',
      { fact: 'entry.up', operator: 'lessThan', value: 1, params: { entry: '21-50-11' } },
    ],
    ['an empty any', { any: [] }],
    ['a fact that nobody knows', { fact: 'flight.colour', operator: 'equal', value: 'red' }],
    ['an operator that nobody knows', { fact: 'flight.level', operator: 'matches', value: 350 }],
    ['a path into a fact', { fact: 'flight.level', operator: 'equal', value: 350, path: '$.x' }],
    [
      'an entry that is not there',
      { fact: 'entry.up', operator: 'greaterThanInclusive', value: 1, params: { entry: '99-99-99' } },
    ],
  ])('when it holds %s', async (_says, when) => {
    const attempt = await load(
      spoilt((content) => {
        firstRow(content)['provisos'] = [{ id: 'a', text: 'Something.', when }];
      }),
    );
    expect(attempt).toMatchObject({ status: 422, code: 'invalid-input', changed: [] });
    expect(attempt.detail).toContain('21-21-11');
  });

  it.each([
    ['a member __proto__', 'format: proviso-mel/1\n__proto__: { admin: true }\n'],
    ['a member constructor', 'format: proviso-mel/1\nconstructor: { prototype: { admin: true } }\n'],
    ['a tag of another language', 'format: !!js/function "function () { return 1 }"\n'],
    [
      'aliases that multiply',
      `a: &a [x,x,x,x,x,x,x,x,x]\n${[...'bcdefghi'].map((name, index) => `${name}: &${name} [${Array.from({ length: 9 }, () => `*${'abcdefghi'[index]}`).join(',')}]`).join('\n')}\n`,
    ],
    ['lists nested 5,000 deep', `entries: ${'['.repeat(5_000)}${']'.repeat(5_000)}\n`],
    ['the same member twice', 'format: proviso-mel/1\nformat: proviso-mel/1\n'],
    ['two documents', 'format: proviso-mel/1\n---\nformat: proviso-mel/1\n'],
    ['a number', '7'],
    ['nothing but a blank', ' \n '],
    ['something else altogether', '<html><body>not found</body></html>'],
  ])('when it is hostile or no list: %s', async (_says, text) => {
    expect(await load(text)).toMatchObject({ status: 422, code: 'invalid-input', changed: [] });
  });

  it('when it is larger than such lists are, before anybody reads it', async () => {
    expect(await load(`# ${'x'.repeat(5_000_000)}`)).toMatchObject({ status: 422, at: ['/text'], changed: [] });
    expect(await load(`# ${'x'.repeat(6_400_000)}`)).toMatchObject({
      status: 413,
      code: 'body-too-large',
      changed: [],
    });
  });

  it('from anybody who is no MEL engineer', async () => {
    for (const name of ['odrin', 'brask', 'ulla']) {
      const client = await server.signIn(name);
      const body = { file: 'mel.yaml', text: good };
      expect(await attempts.refused(client, 'POST', '/api/mel', { body })).toMatchObject({
        status: 403,
        code: 'role-missing',
        changed: [],
      });
    }
  });

  it('when its revision was loaded before, be the text the same or another', async () => {
    expect(await load(good)).toMatchObject({ status: 409, code: 'revision-known', changed: [] });
  });
});

describe('a good file', () => {
  it('comes into force at once and is one entry of the record', async () => {
    const text = spoilt((content) => {
      content.revision = '8';
    });
    const loaded = await engineer.post<Shapes['MelLoaded']>('/api/mel', { file: 'mel-8.yaml', text });
    expect(loaded.body.revision).toMatchObject({ revision: '8', inForce: true });
    const { revisions } = await engineer.get<Shapes['MelRevisions']>('/api/mel');
    expect(revisions.map(({ revision, inForce }) => ({ revision, inForce }))).toEqual([
      { revision: '7', inForce: false },
      { revision: '8', inForce: true },
    ]);
    expect(await attempts.changed()).toEqual(
      expect.arrayContaining(['idempotency', 'mel_revision', 'record_entry', 'record_sealed']),
    );
  });

  it('of two that are loaded at once one is in force in the end, and both are there', async () => {
    const texts = ['9', '10', '11'].map((revision) => spoilt((content) => void (content.revision = revision)));
    await Promise.all(texts.map((text) => engineer.post('/api/mel', { file: 'mel.yaml', text })));
    const { revisions } = await engineer.get<Shapes['MelRevisions']>('/api/mel');
    expect(revisions).toHaveLength(5);
    expect(revisions.filter(({ inForce }) => inForce)).toHaveLength(1);
  });

  it('of one revision that is loaded twice at once one is refused', async () => {
    const text = spoilt((content) => void (content.revision = '12'));
    const answers = await Promise.all(
      [1, 2, 3].map(() => engineer.send('POST', '/api/mel', { body: { file: 'mel.yaml', text } })),
    );
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409, 409]);
  });
});
