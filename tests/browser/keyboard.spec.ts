/** One defect from write-up to release with the keyboard alone: nothing is clicked, and nothing takes a mouse. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { aSite, clockFrom, missing, PATIENT, said, secret, type Site } from './site.js';

let site: Site;
let page: Page;

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-11-25T09:00:00Z') });
  page = await site.as('odrin');
});

afterAll(() => site.stop());

const NAME =
  '(document.activeElement.labels?.[0]?.innerText ?? document.activeElement.innerText ?? "").trim().split("\\n")[0]';
const MOST_PRESSES = 60;

/** Presses Tab until what is called so has the focus. */
async function to(name: RegExp): Promise<void> {
  for (let presses = 0; presses < MOST_PRESSES; presses += 1) {
    if (name.test(await page.evaluate<string>(NAME))) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not lead to ${name.source}.`);
}

async function press(name: RegExp, key = 'Enter'): Promise<void> {
  await to(name);
  await page.keyboard.press(key);
}

async function type(name: RegExp, words: string): Promise<void> {
  await to(name);
  await page.keyboard.insertText(words);
}

const opens = (title: string | RegExp) => page.getByRole('heading', { level: 1, name: title }).waitFor();

/** The statement is read first; then the secret, and Enter. @returns what was to be said and was not */
async function unsaid(statement: RegExp, says: string | RegExp): Promise<(string | RegExp)[]> {
  await page.getByText(statement).first().waitFor();
  await type(/^Your secret, to sign this/, secret);
  await page.keyboard.press('Enter');
  return missing(said(page), says);
}

it('writes it up', async () => {
  await page.getByRole('link', { name: /Q-KEA/ }).waitFor();
  await press(/^Q-KEA/);
  await opens('Q-KEA');
  await press(/^Write up a defect/);
  await opens('Write up a defect');
  await type(/^What is wrong/, 'Left landing light out.');
  await type(/^Message the aircraft showed/, 'LDG LIGHT L');
  await page.keyboard.press('Enter');
  expect(await missing(said(page), 'Written up as Q-KEA/2.')).toEqual([]);
});

it('finds the entry, names the unit, and defers under a row', async () => {
  await page
    .getByRole('link', { name: /Landing light/ })
    .first()
    .waitFor();
  await press(/^Landing light/);
  await opens('Entry 33-42-11');
  await page.getByLabel('L', { exact: true }).waitFor();
  await press(/^L$/, 'Space');
  await page.getByRole('button', { name: 'Choose row 1' }).waitFor();
  await press(/^Choose row 1/);
  expect(await unsaid(/^I defer defect Q-KEA\/2/, /^Deferred under MEL 33-42-11 row 1/)).toEqual([]);
});

it('signs the placard', async () => {
  await press(/^Placard LANDING LIGHT INOP/);
  await opens('Placard');
  await type(/^Number on the placard/, 'P-4001');
  expect(await unsaid(/^I fitted the placard/, 'Placard P-4001 is signed.')).toEqual([]);
});

it('rectifies, undoes, restores and releases', async () => {
  await press(/^Rectify$/);
  await opens('Rectify');
  await type(/^What was done/, 'Lamp replaced.');
  await type(/^Manual reference, with revision/, 'K-AMM 33-42-11 task 1, revision 12');
  await press(/^A test is asked for/, 'Space');
  expect(await unsaid(/^I carried out the work described/, 'The work is signed.')).toEqual([]);
  await press(/^Undo$/);
  await opens('Undo what is left');
  await press(/^Placard, P-4001/, 'Space');
  expect(await unsaid(/^I undid the things named/, 'Undone: 1 thing.')).toEqual([]);
  await press(/^Restore$/);
  await opens('Restore');
  await type(/^Manual reference, with revision/, 'K-AMM 33-42-11 task 1, revision 12');
  expect(await unsaid(/back in its normal configuration/, 'Signed: back in its normal configuration.')).toEqual([]);
  await press(/^Release$/);
  await opens('Release to service');
  for (const seen of [/^Every tool/, /^Every panel/, /is what its register says/]) await press(seen, 'Space');
  expect(await unsaid(/considered ready for release to service/, 'Released to service. The item is closed.')).toEqual(
    [],
  );
  await expect.poll(() => page.getByText('closed', { exact: true }).count(), PATIENT).toBeGreaterThan(0);
});
