/** A write-up that says when it was found is told what holds for that flight (published check D-06, SEEN-Q). */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { aSite, clockFrom, faults, missing, said, type Site } from './site.js';

let site: Site;

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-11-25T09:00:00Z') });
});

afterAll(() => site.stop());

it('is asked of nobody, and once said is answered at once, on its page and in its history', async () => {
  const gate = await site.as('odrin');
  const { aircraft } = await (await site.server.signIn('odrin')).get<Shapes['Fleet']>('/api/fleet');
  await gate.goto(`/aircraft/${aircraft.find(({ registration }) => registration === 'Q-KEC')?.id}/write-up`);
  await gate.getByLabel('What is wrong').fill('Left landing light out.');
  expect(await gate.getByLabel('After take-off').isVisible()).toBe(false);
  await gate.getByText('When it was found, if on a flight').click();
  await gate.getByLabel('After take-off').check();
  expect(await faults(gate)).toEqual([]);
  await gate.getByRole('button', { name: 'Write it up' }).click();
  await said(gate).waitFor();
  const told = [
    'the MEL gives no relief for that flight',
    'Deal with it before the next departure.',
    "The commander and the operator's approved MEL and procedures prevail.",
  ];
  expect(await missing(said(gate), ...told, 'may not leave on another flight')).toEqual([]);
  await gate.goto(new URL(gate.url()).pathname.replace('/entries', ''));
  await gate.getByRole('heading', { name: 'History' }).waitFor();
  expect(await missing(gate.locator('main'), ...told, '(found after take-off)', '(SEEN-Q)')).toEqual([]);
  expect(await faults(gate)).toEqual([]);
});
