/**
 * A card that is stopped half-worked, and a library of cards that is loaded: what is left is named and nothing is lost; a
 * file with errors loads nothing and each is named by card, step, field and reason; a right one comes into force.
 */
import { readFileSync } from 'node:fs';
import { parse, stringify } from 'yaml';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { CardLibraryContent } from '#mel';
import { CardsAtWork } from './cards-at-work.js';
import { DESK, faults, missing, said, sign } from './site.js';

let work: CardsAtWork;
let page: Page;
let defect: string;
let engineer: Page;

beforeAll(async () => {
  work = await CardsAtWork.begin('2026-11-25T09:00:00Z');
  ({ page } = work);
});

afterAll(() => work.stop());

const CARD = 'Case-drain filter of the electric hydraulic pump changed';

it('somebody who cannot finish the card goes to stop it, and sees what is done and what is still out', async () => {
  defect = await work.writtenUp('29-13-11', '1');
  await page.goto(`/defects/${defect}`);
  const card = page.getByRole('listitem').filter({ hasText: 'Case-drain filter' });
  await card.getByRole('button', { name: 'Start this card' }).click();
  await work.atStep('Pump OFF');
  await work.press('Done');
  await work.atStep('Pull and collar');
  await work.press('It is pulled', { 'Number read on the pump breaker with its collar': 'C-22' });
  await work.atStep('Fit the placard');
  await page.getByRole('link', { name: 'Stop the card' }).click();
  expect(
    await missing(
      page,
      '2 of 21 steps are done.',
      'so it cannot be stopped yet.',
      'Counted out: 1',
      /PULLED \(C-22\)/,
    ),
  ).toEqual([]);
  expect(await faults(page)).toEqual([]);
});

it('the card is not stopped while something of it is out, which is named; nothing that was done is lost', async () => {
  await page.getByLabel('Why it is stopped').fill('No seals in the store.');
  await sign(page, 'Sign: stop the card');
  expect(
    await work.stopped(
      /still pulled: pump breaker with its collar at main equipment bay, panel P3, B1/,
      /Undo each by its step first/,
    ),
  ).toEqual([]);
  expect(await page.getByLabel('Why it is stopped').inputValue()).toBe('No seals in the store.');
  await page.getByRole('link', { name: 'The card', exact: true }).click();
  await page.getByText('2 steps are done').waitFor();
  await work.atStep('Fit the placard');
});

it('a card with nothing out is stopped, says so at the item, and may be taken up again', async () => {
  const other = await work.writtenUp('49-10-21', '1');
  await page.goto(`/defects/${other}`);
  const rig = page.getByRole('listitem').filter({ hasText: 'APU door rigged' });
  await rig.getByRole('button', { name: 'Start this card' }).click();
  await work.atStep('APU stopped');
  await work.press('Done');
  await work.atStep('Fit the lock pin');
  await page.getByRole('link', { name: 'Stop the card' }).click();
  await page.getByLabel('Why it is stopped').fill('The rig pins are at the other base.');
  await sign(page, 'Sign: stop the card');
  expect(await missing(said(page), 'APU door rigged: the card is stopped.')).toEqual([]);
  expect(await missing(page, /stopped, 1 of 6 steps done/)).toEqual([]);
  expect(await rig.getByRole('button', { name: 'Start this card' }).count()).toBe(1);
});

const library = (): CardLibraryContent =>
  parse(readFileSync(new URL('../../seed/cards.yaml', import.meta.url), 'utf8')) as CardLibraryContent;

/** Chooses a file of that content, and has it checked. */
async function load(content: object): Promise<void> {
  const buffer = Buffer.from(stringify(content));
  await engineer.getByLabel('The file').setInputFiles({ name: 'cards-4.yaml', mimeType: 'text/yaml', buffer });
  await engineer.getByRole('button', { name: 'Check it and put it in force' }).click();
}

it('a library with an error loads nothing; the error is named by file, card, step, field and reason', async () => {
  engineer = await work.site.as('mabbet', { viewport: DESK });
  await engineer.goto('/cards');
  await engineer.getByRole('link', { name: 'Load a library of cards' }).click();
  const content = { ...library(), revision: '4' };
  const seals = content.cards[0]!.steps.find(({ id }) => id === 'seals')!;
  seals.needs = [{ kind: 'tool', what: 'seal pick' }];
  await load(content);
  const alert = engineer.getByRole('alert');
  expect(
    await missing(
      alert,
      /card case-drain-filter, step seals: .*account.*"seal pick" is a tool, so an account issues/,
    ),
  ).toEqual([]);
  expect(await faults(engineer)).toEqual([]);
  await engineer.goto('/cards');
  expect(await missing(engineer, 'QOF-CARDS-K, revision 3 of 10 Nov 2025, for Kellwing: in force')).toEqual([]);
  expect(await engineer.getByText('revision 4').count()).toBe(0);
});

it('a right one comes into force, with what it leaves behind; the card under way goes on by its own text', async () => {
  await engineer.getByRole('link', { name: 'Load a library of cards' }).click();
  const { cards, ...head } = library();
  await load({ ...head, revision: '4', cards: cards.filter(({ id }) => id !== 'case-drain-filter') });
  expect(
    await missing(
      said(engineer),
      'QOF-CARDS-K, revision 4, is in force with 8 cards.',
      `"${CARD}" stood in the library before and is no longer offered`,
      /Q-KEA\/\d+: card "Case-drain filter .* is under way, and the library has no such card/,
    ),
  ).toEqual([]);
  expect(await missing(engineer, /for Kellwing: in force/, /Library and MEL do not fit/)).toEqual([]);
  expect(await faults(engineer)).toEqual([]);
  await page.goto(`/defects/${defect}`);
  await page.getByRole('link', { name: new RegExp(CARD) }).click();
  await work.atStep('Fit the placard');
  await work.press('It is fitted', { 'Number read on the DO NOT PRESSURISE placard': 'P-7' });
  await work.atStep('Release the latches');
});
