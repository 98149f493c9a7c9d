/** A row that answers no says what to do next; and a second person concurs where the operator asks for one. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { aSite, clockFrom, DESK, faults, missing, said, sign, type Site } from './site.js';

let site: Site;
let gate: Page;

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-11-25T09:00:00Z') });
  gate = await site.as('odrin');
});

afterAll(() => site.stop());

async function writeUp(registration: string): Promise<string> {
  const { aircraft } = await (await site.server.signIn('odrin')).get<Shapes['Fleet']>('/api/fleet');
  await gate.goto(`/aircraft/${aircraft.find((one) => one.registration === registration)?.id}/write-up`);
  await gate.getByLabel('What is wrong').fill('Left landing light out.');
  await gate.getByLabel('Message the aircraft showed').fill('LDG LIGHT L');
  await gate.getByRole('button', { name: 'Write it up' }).click();
  await gate
    .getByRole('link', { name: /Landing light/ })
    .first()
    .click();
  await gate.getByLabel('L', { exact: true }).check();
  await gate
    .getByRole('region', { name: /^Answer for/ })
    .first()
    .waitFor();
  return new URL(gate.url()).pathname;
}

it('a clear no tells what next: rectify, another basis, or maintenance control', async () => {
  await writeUp('Q-KEC');
  const row = gate.getByRole('region', { name: 'Row 1' });
  expect(
    await missing(row, 'What next', /Call maintenance control: QOF \d+ needs another aircraft, or another route\./),
  ).toEqual([]);
  expect(await faults(gate)).toEqual([]);
  await row.getByRole('link', { name: 'Rectify it' }).click();
  await gate.getByRole('heading', { level: 1, name: 'Rectify' }).waitFor();
});

it('a yes tells no such thing', async () => {
  await writeUp('Q-KEA');
  expect(await gate.getByRole('heading', { name: 'What next' }).count()).toBe(0);
});

it('where control has to concur, the gate is told whom to call and what to name', async () => {
  const quality = await site.server.signIn('wenna');
  const { etag } = await quality.send('GET', '/api/settings');
  const changes = [{ key: 'concurrenceNeeded', value: true, reason: 'Control procedure 2.1.' }];
  await quality.put('/api/settings', { changes }, { ifMatch: etag });
  await gate.reload();
  await gate.getByLabel('L', { exact: true }).check();
  const row = gate.getByRole('region', { name: 'Row 1' });
  expect(await missing(row, /^Call maintenance control and name Q-KEA\/2 and MEL 33-42-11 row 1\./)).toEqual([]);
});

it('control concurs on the same page, and the deferral is signed then', async () => {
  const control = await site.as('brask', { viewport: DESK });
  await control.goto(new URL(gate.url()).pathname);
  await control.getByLabel('L', { exact: true }).check();
  await control.getByRole('button', { name: 'Concur to MEL 33-42-11 row 1' }).click();
  await control.getByText(/^I concur that defect Q-KEA\/2 on Q-KEA stands deferred/).waitFor();
  expect(await faults(control)).toEqual([]);
  await sign(control, 'Sign: concur');
  await control.getByText('Brask Ondelly concurs').waitFor();
  const row = gate.getByRole('region', { name: 'Row 1' });
  await row.getByRole('button', { name: 'Look again' }).click();
  expect(await missing(row, 'Brask Ondelly concurs')).toEqual([]);
  await row.getByRole('button', { name: 'Choose row 1' }).click();
  await sign(gate, 'Sign: defer');
  expect(await missing(said(gate), /^Deferred under MEL 33-42-11 row 1/)).toEqual([]);
});
