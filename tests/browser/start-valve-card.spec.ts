/**
 * The card of the start valve: held against a newer revision of its manual by somebody who may, and worked on a telephone
 * with everything right and each thing that can be forgotten.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { CardsAtWork } from './cards-at-work.js';
import { doCard } from '../support/do-card.js';
import { DESK, faults, missing, PATIENT, said, sign } from './site.js';

let work: CardsAtWork;
let page: Page;
let defect: string;
let engineer: Page;

const REVISED = {
  Manual: 'K-AMM',
  Task: '80-12-11 task 3',
  Revision: '13',
  'Day it was issued': '2026-11-01',
};

const atStep = (text: string) => work.atStep(text);
const press = (button: string, fields?: Record<string, string>) => work.press(button, fields);
const stopped = (...words: (string | RegExp)[]) => work.stopped(...words);
const signsBeside = (named: string, own?: string) => work.signsBeside(named, own);
const pass = (minutes: number) => work.pass(minutes);

beforeAll(async () => {
  work = await CardsAtWork.begin('2026-11-25T09:00:00Z');
  ({ page } = work);
});

afterAll(() => work.stop());

it('an engineer records that the manual was revised, and its cards wait from then on', async () => {
  engineer = await work.site.as('sennet');
  await engineer.goto('/cards');
  await engineer.getByRole('link', { name: 'Record a newer revision of a manual' }).click();
  for (const [label, value] of Object.entries(REVISED)) await engineer.getByLabel(label).fill(value);
  expect(await faults(engineer)).toEqual([]);
  await engineer.getByRole('button', { name: 'Record it' }).click();
  expect(await missing(said(engineer), 'Revision 13 of K-AMM is recorded.')).toEqual([]);
  const waiting = engineer.getByRole('heading', { name: 'To be held against a newer revision: 1' });
  await waiting.waitFor();
  expect(await missing(engineer, /Kellwing. Written from K-AMM 80-12-11 task 3, revision 12; revision 13/)).toEqual(
    [],
  );
});

it('one of the day after tomorrow, and one that was recorded before, are refused at their field', async () => {
  const typed = await work.site.as('wenna', { viewport: DESK });
  await typed.goto('/cards/revisions');
  const told = { ...REVISED, Revision: '14', 'Day it was issued': '2026-11-27' };
  for (const [label, value] of Object.entries(told)) await typed.getByLabel(label).fill(value);
  await typed.getByRole('button', { name: 'Record it' }).click();
  expect(await missing(typed, 'lies in the future')).toEqual([]);
  for (const [label, value] of Object.entries(REVISED)) await typed.getByLabel(label).fill(value);
  await typed.getByRole('button', { name: 'Record it' }).click();
  expect(await missing(typed.getByRole('alert'), /Revision 13 of K-AMM .* is recorded already/)).toEqual([]);
});

it('meanwhile the card is worked and cannot be signed, and the sentence says why', async () => {
  const { odrin } = work;
  defect = await work.writtenUp('80-12-11', '2');
  await odrin.sign(
    defect,
    'deferral',
    { act: 'defer', entry: '80-12-11', row: '1' },
    { row: '1', item: { entry: '80-12-11', units: ['2'] } },
  );
  const id = await doCard(odrin, { defect, card: 'start-valve-by-hand', procedure: '80-12-11/1/M2', pass });
  await page.goto(`/defects/${defect}/cards/${id}`);
  await page.getByText('Revision 13 of 1 Nov 2026 is recorded since.').waitFor();
  await sign(page, 'Sign the card');
  expect(
    await stopped(
      'was written from K-AMM 80-12-11 task 3, revision 12; revision 13',
      /Ask an authorised person to hold the card against revision 13/,
    ),
  ).toEqual([]);
});

it('whoever may not confirm it is told so; the engineer opens the form, reads what is certified, and confirms', async () => {
  const other = await work.site.as('odrin');
  await other.goto('/cards');
  await other.getByText('I held it against revision 13').click();
  await sign(other, /^Sign: the card still says/);
  expect(await missing(other.getByRole('alert'), /does not cover "confirm-card"/)).toEqual([]);
  await engineer.getByText('I held it against revision 13').click();
  await engineer
    .getByText(/I held work card "Start valve opened by hand.*against revision 13, and it still says/)
    .waitFor();
  expect(await faults(engineer)).toEqual([]);
  await sign(engineer, /^Sign: the card still says/);
  expect(await missing(engineer, /Confirmed against revision 13 by Sennet Aurlo/)).toEqual([]);
  expect(await engineer.getByText('To be held against a newer revision').count()).toBe(0);
});

it('then it is signed', async () => {
  await page.reload();
  expect(await missing(page, 'confirmed against it by Sennet Aurlo')).toEqual([]);
  await sign(page, 'Sign the card');
  await said(page).waitFor();
});

it('the start valve card is started at its procedure for one departure, and waits as long as the aircraft shows', async () => {
  await page.goto(`/defects/${defect}/work/80-12-11/1/M2`);
  await page.getByRole('button', { name: 'Start this card' }).click();
  await atStep('Agree the calls');
  await signsBeside('Hebba Strinn, commander');
  await press('Done');
  await page.getByText('1 step is done').click();
  await page.getByText(/^done: Odrin Vask with Hebba Strinn, who signed/).waitFor();
  await atStep('Hang the START BY HAND tag');
  await press('It is fitted', { 'Number read on the START BY HAND tag': 'T-4' });
  await atStep('Read the starter cooling time');
  await press('Begin: the time counts from now', { Minutes: '7' });
  await page.getByText(/^(7:00|6:5\d) left$/).waitFor();
  pass(7);
  await page.reload();
  await press('The time is over');
  await atStep('Release the latches');
  await press('It is unlatched', { 'How many unlatched, of 3': '3' });
  await atStep('Open the access door');
  await press('It is open');
  await atStep('Have the flight deck read');
  await press('Read', { 'duct pressure, psi': '38' });
  await atStep('On the call "open"');
  expect(await faults(page)).toEqual([]);
  await press('Done');
  await atStep('On the call "close"');
  await press('Done');
  await atStep('Close the access door');
});

it('the door and the tag that are forgotten are named; with both counted in the card is signed', async () => {
  expect(await page.getByRole('button', { name: 'Sign the card' }).count()).toBe(0);
  expect(
    await missing(
      page.getByRole('region', { name: /^It can be signed once this is done: 4$/ }),
      /^still fitted: START BY HAND tag at .* \(T-4\)$/,
      /^still open: start valve access door at /,
      /^still unlatched: 3 access door latches at /,
      /^not done: step 11 "Leave by the cleared path/,
    ),
  ).toEqual([]);
  await press('It is closed');
  await atStep('Latch the access door');
  await press('It is latched', { 'How many latched, of 3': '3' });
  await atStep('Leave by the cleared path');
  await press('Done');
  await atStep('Have the tag taken off');
  await signsBeside('Hebba Strinn, commander');
  await press('It is removed', { 'Number read on the START BY HAND tag': 'T-4' });
  await expect.poll(() => page.getByText('Counted out: 0').count(), PATIENT).toBe(1);
  await sign(page, 'Sign the card');
  await said(page).waitFor();
});
