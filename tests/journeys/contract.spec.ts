/** The interface is what its document says: every answer, every problem, every address. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Validator } from '@seriousme/openapi-schema-validator';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { REFUSALS, type RefusalCode } from '#deferrals';
import { PROBLEMS } from '../../apps/server/src/http/problem.js';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { Contract, type OpenApi } from '../support/contract.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

let server: RunningServer;
let client: ApiClient;

beforeAll(async () => {
  server = await runningServer({ now: () => '2026-01-15T12:12:00.000Z', demo: true });
  client = await server.signIn('brask');
});

afterAll(() => server.stop());

describe('the document', () => {
  it('is valid OpenAPI 3.1 and served where it says, with a page to read it', async () => {
    const response = await server.visitor().page('/api/docs/openapi.json');
    const body = (await response.json()) as OpenApi;
    const result = await new Validator().validate(structuredClone(body) as unknown as Record<string, unknown>);
    expect(result.errors ?? []).toEqual([]);
    expect(body).toEqual(JSON.parse(JSON.stringify(server.contract.document)));
    const page = await server.visitor().page('/api/docs');
    expect({ status: page.status, type: page.headers.get('content-type') }).toEqual({
      status: 200,
      type: expect.stringContaining('text/html') as string,
    });
  });

  it('describes the success of every operation, and a problem for everything else', () => {
    for (const [path, operations] of Object.entries(server.contract.document.paths)) {
      for (const [method, { responses }] of Object.entries(operations)) {
        const statuses = Object.keys(responses);
        expect(statuses, `${method} ${path}`).toContain('default');
        expect(
          statuses.filter((status) => /^2\d\d$/.test(status)),
          `${method} ${path}`,
        ).toHaveLength(1);
      }
    }
  });

  // What proves a person is good once by itself: a session, a challenge that was answered.
  const PROVES_SOMEBODY = /^\/api\/(session|passkeys|sign-on)|\/card-seconds$/;

  it('asks for Idempotency-Key wherever something is kept, and for If-Match wherever a defect is changed', () => {
    type Asking = { summary?: string; parameters?: { name: string; required?: boolean }[] };
    const kept = Object.entries(server.contract.document.paths).flatMap(([path, operations]) =>
      Object.entries(operations as Record<string, Asking>)
        .filter(([method]) => method !== 'get' && !PROVES_SOMEBODY.test(path))
        .filter(([, { summary = '' }]) => !summary.includes('Nothing is stored.'))
        .map(([method, { parameters = [] }]) => ({
          operation: `${method} ${path}`,
          asks: parameters.filter(({ required }) => required).map(({ name }) => name),
        })),
    );
    expect(kept.length).toBeGreaterThan(12);
    for (const { operation, asks } of kept) {
      expect(asks, operation).toContain('Idempotency-Key');
      if (operation.includes('/defects/{id}/')) expect(asks, operation).toContain('If-Match');
    }
  });
});

describe('every address that is read', () => {
  it('answers as documented', async () => {
    const { aircraft } = await client.get<Shapes['Fleet']>('/api/fleet');
    const { defects } = await client.get<Shapes['DefectList']>('/api/defects');
    const paths = ['/api/session', '/api/mel', '/api/facts', '/api/problems', '/api/health', '/api/record/head'];
    for (const { id, nextFlight } of aircraft) {
      const { flights } = await client.get<Shapes['AircraftView']>(`/api/aircraft/${id}`);
      paths.push(`/api/record?aircraft=${id}`, `/api/aircraft/${id}/answer`, `/api/aircraft/${id}/entries?q=valve`);
      paths.push(...flights.map((flight) => `/api/aircraft/${id}/answer?flight=${flight.id}`));
      expect(nextFlight?.flight.id).toBe(flights[0]?.id);
    }
    for (const { id } of defects) paths.push(`/api/defects/${id}`, `/api/defects/${id}/statement?act=release`);
    for (const path of paths) expect(await client.get<object>(path), path).toBeTypeOf('object');
  });

  it('shows every entry of the MEL as documented, for both configurations', async () => {
    const numbers = [...readFileSync('seed/mel.yaml', 'utf8').matchAll(/^ {2}- number: (\S+)$/gm)].map(
      ([, number]) => number,
    );
    expect(numbers.length).toBeGreaterThanOrEqual(40);
    const { aircraft } = await client.get<Shapes['Fleet']>('/api/fleet');
    for (const mark of ['Q-KEA', 'Q-KEO']) {
      const id = aircraft.find(({ registration }) => registration === mark)?.id;
      for (const number of numbers) {
        const entry = await client.get<Shapes['EntryView']>(`/api/aircraft/${id}/entries/${number}`);
        expect(entry.number).toBe(number);
        expect(entry.applies === 'yes' ? entry.rows.length : 1).toBeGreaterThan(0);
      }
    }
  });
});

describe('a problem', () => {
  it('has a type for every refusal, under which its words and its one status are read', async () => {
    const { problems } = await client.get<Shapes['ProblemTypes']>('/api/problems');
    const codes = [...Object.keys(PROBLEMS), ...Object.keys(REFUSALS)];
    expect(problems.map(({ type }) => type)).toEqual(codes.map((code) => `/api/problems/${code}`));
    expect(new Set(codes).size).toBe(codes.length);
    for (const problem of problems) {
      expect(await client.get(problem.type)).toEqual(problem);
      expect(problem.status).toBeGreaterThanOrEqual(400);
      expect(problem.status).toBeLessThan(600);
      expect(problem.next).not.toBe('');
      const code = problem.type.replace('/api/problems/', '') as RefusalCode;
      if (code in REFUSALS) expect([403, 409, 422]).toContain(problem.status);
    }
  });
});

describe('the check itself', () => {
  const broken = () =>
    new Contract(JSON.parse(JSON.stringify(server.contract.document)) as OpenApi, server.contract.problems);
  const seen = { method: 'GET', path: '/api/record/head', status: 200, contentType: 'application/json' };

  it('finds an answer with a member too many, too few, or of the wrong kind', () => {
    expect(broken().misfits({ ...seen, body: { size: 3, root: 'ab' } })).toEqual([]);
    expect(broken().misfits({ ...seen, body: { size: 3 } })).toHaveLength(1);
    expect(broken().misfits({ ...seen, body: { size: '3', root: null } })).toHaveLength(1);
    expect(broken().misfits({ ...seen, body: { size: 3, root: null, more: 1 } })).toHaveLength(1);
  });

  it('finds an address or a status that no document names, and a problem that is none', () => {
    expect(broken().misfits({ ...seen, path: '/api/secret', body: {} })).toHaveLength(1);
    expect(broken().misfits({ ...seen, status: 201, body: {} })).toHaveLength(1);
    expect(broken().misfits({ ...seen, status: 404, body: { message: 'no' } })).toHaveLength(1);
    const problem = { type: '/api/problems/not-found', title: 'No', status: 404, detail: 'No.' };
    const contentType = 'application/problem+json; charset=utf-8';
    expect(broken().misfits({ ...seen, status: 404, contentType, body: problem })).toEqual([]);
    expect(broken().misfits({ ...seen, status: 409, contentType, body: problem })).toHaveLength(1);
    const other = { ...problem, type: '/api/problems/secret-wrong' };
    expect(broken().misfits({ ...seen, status: 404, contentType, body: other })).toHaveLength(1);
  });

  it('is used by every journey: no other client speaks to the server', () => {
    const folder = 'tests/journeys';
    const others = readdirSync(folder)
      .filter((name) => name.endsWith('.ts'))
      .filter((name) => /\bfetch[(]/.test(readFileSync(join(folder, name), 'utf8')));
    expect(others).toEqual([]);
  });
});
