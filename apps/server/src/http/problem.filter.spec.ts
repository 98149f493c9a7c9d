import type { ArgumentsHost } from '@nestjs/common';
import { pino } from 'pino';
import { expect, it } from 'vitest';
import { EvaluatorsDisagree } from '#dispatch';
import { StaleVersion } from '#store';
import { situationOf } from '../../../../tests/support/small-mel.js';
import { ProblemFilter } from './problem.filter.js';

/** What somebody is answered who asked for it, and the line in the log. */
function caught(thrown: unknown) {
  const lines: string[] = [];
  const answer = { status: 0, body: '' };
  const reply = {
    status: (status: number) => {
      answer.status = status;
      return reply;
    },
    header: () => reply,
    send: (body: string) => void (answer.body = body),
  };
  const http = {
    getResponse: () => reply,
    getRequest: () => ({ method: 'GET', url: '/api/aircraft/1/next-flights' }),
  };
  const logger = pino({ level: 'error' }, { write: (line: string) => void lines.push(line) });
  new ProblemFilter(logger).catch(thrown, { switchToHttp: () => http } as unknown as ArgumentsHost);
  return {
    ...answer,
    told: JSON.parse(answer.body) as object,
    logged: lines.map((line): unknown => JSON.parse(line)),
  };
}

it('two ways of computing an answer that disagree refuse it, say so, and are both logged', () => {
  const ways = [
    { way: 'the rules engine', lo: 'may-not-fly', hi: 'may-not-fly', conditions: [] },
    { way: 'the search for rows', lo: 'may-not-fly', hi: 'may-fly', conditions: null },
  ] as const;
  const situation = situationOf([]);
  const { status, told, logged } = caught(
    new EvaluatorsDisagree(situation, [{ ...ways[0], conditions: [] }, ways[1]]),
  );
  expect(status).toBe(500);
  expect(told).toMatchObject({
    type: '/api/problems/judges-disagree',
    next: 'Do not dispatch on this answer; call maintenance control.',
  });
  expect(told).toHaveProperty('detail', expect.stringContaining('the rules engine says "may-not-fly"'));
  expect(told).toHaveProperty('detail', expect.stringContaining('the search for rows says "may-not-fly to may-fly"'));
  expect(logged).toMatchObject([{ aircraft: situation.aircraft.registration, ways }]);
});

it('what nobody foresaw is answered without its inside', () => {
  const { status, body, logged } = caught(new Error('the inside'));
  expect(status).toBe(500);
  expect(body).toContain('/api/problems/internal-error');
  expect(body).not.toContain('the inside');
  expect(logged).toMatchObject([{ err: { message: 'the inside' } }]);
});

it('a row that somebody else changed at the same moment is no error of the server', () => {
  const { status, told, logged } = caught(new StaleVersion('membership', 'somebody', 3));
  expect([status, logged]).toEqual([412, []]);
  expect(told).toMatchObject({ type: '/api/problems/changed-meanwhile' });
});
