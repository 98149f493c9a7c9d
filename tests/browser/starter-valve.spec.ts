/**
 * One defect of one aircraft, from write-up to release, as the technician does it on a telephone at the gate, while
 * maintenance control looks on from its desk.
 */
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { doSteps } from '../support/do-card.js';
import { aSite, clockFrom, DESK, faults, missing, PATIENT, said, secret, sign, type Site, goOver } from './site.js';

let site: Site;
/** Milliseconds by which the waits of a card were let pass. */
let ahead = 0;
let gate: Page;
let control: Page;

beforeAll(async () => {
  const clock = clockFrom('2026-11-25T09:00:00Z');
  site = await aSite({ now: () => new Date(Date.parse(clock()) + ahead).toISOString() });
  control = await site.as('brask', { viewport: DESK });
  gate = await site.as('odrin');
});

afterAll(() => site.stop());

/** The line of the aircraft in control's table, read anew. */
async function atControl(): Promise<Locator> {
  const read = control.waitForResponse((response) => response.url().endsWith('/api/fleet'));
  await control.getByRole('button', { name: 'Read again' }).click();
  await (await read).finished();
  return control.getByRole('row', { name: /Q-KEA/ });
}

it('control begins at the fleet, where the aircraft has nothing open', async () => {
  expect(new URL(control.url()).pathname).toBe('/control');
  expect(await missing(await atControl(), 'nothing open', 'no deadline')).toEqual([]);
});

it('the technician begins at the gate, and writes the defect up with the keyboard alone', async () => {
  expect(new URL(gate.url()).pathname).toBe('/aircraft');
  const card = gate.getByRole('link', { name: /Q-KEA/ });
  await card.focus();
  await gate.keyboard.press('Enter');
  await gate.getByRole('heading', { level: 1, name: 'Q-KEA' }).waitFor();
  await expect.poll(() => focused(gate), PATIENT).toBe('Q-KEA');
  await tabTo(gate, 'Write up a defect');
  await gate.keyboard.press('Enter');
  await gate.getByRole('heading', { level: 1, name: 'Write up a defect' }).waitFor();
  await tabTo(gate, 'What is wrong');
  await gate.keyboard.type('Engine 2 does not turn when start is selected. The valve stays shut; it opens by hand.');
  await gate.keyboard.press('Tab');
  await gate.keyboard.type('ENG 2 START VALVE NOT OPEN');
  await gate.keyboard.press('Tab');
  await gate.keyboard.type('QOF-71660');
  await gate.keyboard.press('Enter');
  await said(gate).waitFor();
  expect(await said(gate).innerText()).toContain('Until it is answered the aircraft may not fly.');
  const heard = async () => (await gate.getByRole('status').allInnerTexts()).join(' ');
  await expect.poll(heard, PATIENT).toContain('Written up as Q-KEA/2');
});

it('from then on control is told that it may not fly', async () => {
  expect(await missing(await atControl(), 'write-up not answered', 'may not fly')).toEqual([]);
});

it('the message alone has found the entry, and each hit says why and for which aircraft', async () => {
  const first = gate.getByRole('listitem').first();
  await gate.getByRole('link', { name: /80-12-11/ }).waitFor();
  const hit = await first.innerText();
  expect(hit).toContain('Engine start valve');
  expect(hit).toContain('For Q-KEA');
  expect(hit).toContain('fault message "ENG 2 START VALVE NOT OPEN"');
  expect(await faults(gate)).toEqual([]);
  await first.getByRole('link').click();
});

it('the row says what it would answer for the next flight, with each proviso and the work to come', async () => {
  await gate.getByText('Name the unit to see what each row answers.').waitFor();
  await gate.getByLabel('2', { exact: true }).check();
  const answer = gate.getByRole('region', { name: /^Answer for QOF 109/ });
  await answer.waitFor();
  const text = await answer.innerText();
  expect(text).toContain('may fly after work');
  expect(text).toContain('At least one ground headset jack is operative');
  expect(text).toContain('To do before it: 5 things, 45 min');
  expect(text).toContain('commander, 5 min');
  expect(text).toContain('Not looked at:');
  expect(await faults(gate)).toEqual([]);
});

it('when nobody knows which, the row answers for either', async () => {
  await gate.getByLabel('One of these, not known which').check();
  const answer = gate.getByRole('region', { name: /^Answer for QOF 109/ });
  await answer.getByText('Why, condition by condition').click();
  expect(await missing(answer, 'Engine start valve 1 (80-12-11 row 1), if it is this one')).toEqual([]);
  await gate.getByLabel('2', { exact: true }).check();
  await answer.getByText('if it is this one').first().waitFor({ state: 'detached' });
});

it('choosing the row shows what is certified; the secret under it defers, and the deadline is counted out', async () => {
  await gate.getByRole('button', { name: 'Choose row 1' }).click();
  await gate.getByText('I defer defect Q-KEA/2 on Q-KEA on the basis of MEL 80-12-11 row 1.').waitFor();
  await expect.poll(() => focused(gate), PATIENT).toBe('You certify');
  await sign(gate, 'Sign: defer');
  await said(gate).waitFor();
  expect(await said(gate).innerText()).toContain('Deferred under MEL 80-12-11 row 1 (category C).');
  expect(await missing(gate, '10 of 10 calendar days left, until 5 Dec 2026 23:59 local')).toEqual([]);
  expect(await missing(gate, 'day excluded, days 26 Nov to 5 Dec (10 days)', '4 signatures owed')).toEqual([]);
  expect(await faults(gate)).toEqual([]);
});

it('the (M) procedure shows cautions and steps, and takes the number of what it leaves', async () => {
  await gate.getByRole('link', { name: /^\(M\) M1/ }).click();
  await gate.getByText('duct vented before the connector is touched').waitFor();
  expect(await gate.locator('ol.steps > li').count()).toBe(3);
  expect(await faults(gate)).toEqual([]);
  await gate.getByLabel('Number on its collar, streamer or label').fill('K-0101');
  await sign(gate, 'Sign: M1 done');
  expect(await missing(said(gate), '(M) M1 is signed.')).toEqual([]);
  expect(await missing(gate, 'Connector capped, K-0101')).toEqual([]);
});

it('the placard is signed with its number', async () => {
  await gate.getByRole('link', { name: /^Placard START VALVE/ }).click();
  await gate.getByText('START VALVE INOP - OPENED BY HAND').waitFor();
  expect(await faults(gate)).toEqual([]);
  await gate.getByLabel('Number on the placard').fill('P-3001');
  await sign(gate, 'Sign: placard fitted');
  expect(await missing(said(gate), 'Placard P-3001 is signed.')).toEqual([]);
});

it('the hand opening is signed for one departure, the next one unless said otherwise', async () => {
  await gate.getByRole('link', { name: /^\(M\) M2/ }).click();
  await gate.getByLabel(/^QOF 109/).waitFor();
  expect(await gate.getByLabel(/^QOF 109/).isChecked()).toBe(true);
  await gate.getByRole('button', { name: 'Start this card' }).click();
  await gate.locator('.card-steps > li.now').getByText('Agree the calls').waitFor();
  const [, defect = '', work = ''] = /defects\/([^/]+)\/cards\/([^/]+)/.exec(gate.url()) ?? [];
  await doSteps(await site.server.signIn('odrin'), work, { defect, pass: (minutes) => (ahead += minutes * 60_000) });
  await gate.reload();
  await gate.getByText('Counted out: 0').waitFor();
  await sign(gate, 'Sign the card');
  await said(gate).waitFor();
});

it('control sees what is left to do before the flight, and who does it', async () => {
  const line = await atControl();
  const todo = '1 thing to do, 5 min: (O) Start the engine concerned first, at the stand.';
  expect(await missing(line, todo, 'open under deferral', 'may fly after work', '= 21:59 UTC')).toEqual([]);
});

it('the commander signs the (O) procedure, and control sees that it may fly', async () => {
  const cockpit = await site.as('hebba');
  await cockpit.goto(gate.url());
  await cockpit.getByRole('link', { name: /^\(O\) O1/ }).click();
  await cockpit.getByLabel(/^QOF 109/).waitFor();
  await sign(cockpit, 'Sign: O1 done');
  await said(cockpit).waitFor();
  expect(await missing(await atControl(), /^may fly$/)).toEqual([]);
});

it('the aircraft shows first what is left on it', async () => {
  await gate.getByRole('link', { name: 'Q-KEA', exact: true }).click();
  const headings = gate.getByRole('heading', { level: 2 });
  await headings.first().waitFor();
  expect((await headings.allInnerTexts()).slice(0, 3)).toEqual([
    'Left on the aircraft: 2 things',
    '1 open item',
    'Next flight',
  ]);
  await gate.getByRole('region', { name: /^Answer for QOF 109/ }).waitFor();
  expect(await faults(gate)).toEqual([]);
});

it('the work is signed with its part, and asks for a test and an independent inspection', async () => {
  await gate.getByRole('link', { name: /Engine start valve, 2/ }).click();
  await gate.getByRole('link', { name: 'Rectify' }).click();
  await gate.getByLabel('What was done').fill('Start valve of engine 2 replaced.');
  await gate.getByLabel('Manual reference, with revision').fill('K-AMM 80-12-11 task 9, revision 12');
  await gate.getByText('A part was fitted').click();
  await gate.getByLabel('Part number').fill('KW-8012-3');
  await gate.getByLabel('An independent inspection is asked for').check();
  expect(await faults(gate)).toEqual([]);
  await sign(gate, 'Sign: work done');
  await said(gate).waitFor();
  expect(await missing(await atControl(), 'may not fly')).toEqual([]);
});

it('what is left is ticked off by its number, the test is signed, the system is restored', async () => {
  expect(await faults(gate)).toEqual([]);
  await gate.getByRole('link', { name: 'Undo', exact: true }).click();
  await gate.getByLabel(/Connector capped, K-0101/).check();
  await gate.getByLabel(/Placard, P-3001/).check();
  await sign(gate, 'Sign: 2 things undone');
  await said(gate).waitFor();
  await gate.getByRole('link', { name: 'Test', exact: true }).click();
  await gate.getByLabel('Which test, and what it read').fill('Engine 2 started with the switch: open in 1 second.');
  await gate.getByLabel('good', { exact: true }).check();
  await sign(gate, 'Sign: tested');
  await said(gate).waitFor();
  await gate.getByRole('link', { name: 'Restore', exact: true }).click();
  await gate.getByLabel('Manual reference, with revision').fill('K-AMM 80-12-11 task 9, revision 12');
  await sign(gate, 'Sign: restored');
  expect(await missing(said(gate), 'Signed: back in its normal configuration.')).toEqual([]);
});

it('who did the work cannot inspect it; a second person can', async () => {
  await gate.getByRole('link', { name: 'Inspect', exact: true }).click();
  await gate.getByLabel('What you looked at and found').fill('Valve seated, locked and leak-free.');
  await sign(gate, 'Sign: inspected');
  await gate.getByRole('alert').getByText('What to do:').waitFor();
  expect(await gate.getByLabel('What you looked at and found').inputValue()).toContain('locked and leak-free');
  const second = await site.as('wick');
  await second.goto(gate.url());
  await second.getByLabel('What you looked at and found').fill('Valve seated, locked and leak-free.');
  await sign(second, 'Sign: inspected');
  await said(second).waitFor();
});

it('the release closes it under the release statement', async () => {
  await gate.getByRole('link', { name: 'Q-KEA/2' }).click();
  await gate.getByRole('link', { name: 'Release', exact: true }).click();
  await gate.getByText('considered ready for release to service').waitFor();
  expect(await faults(gate)).toEqual([]);
  await goOver(gate);
  await sign(gate, 'Sign: release to service');
  expect(await missing(said(gate), 'Released to service. The item is closed.')).toEqual([]);
  expect(await missing(gate, 'closed')).toEqual([]);
  expect(await gate.getByRole('heading', { name: 'Left on the aircraft for it' }).count()).toBe(0);
});

it('the history tells who, under which licence and authorisation, for whom, and its numbers in the record', async () => {
  const history = gate.locator('ol.history > li');
  await history
    .getByText(/Sealed in the record as number/)
    .last()
    .waitFor();
  const released = await history.last().innerText();
  expect(released).toContain('Released to service');
  expect(released).toContain('Odrin Vask, technician, Orrinfell Line Maintenance (QX-MNT-0207)');
  expect(released).toContain('licence QX.66.20417, authorisation QOF-L-011');
  expect(await history.first().innerText()).toContain('Written up on sheet QOF-71660');
  expect(await faults(gate)).toEqual([]);
});

it('control sees nothing open again', async () => {
  expect(await missing(await atControl(), 'nothing open', 'no deadline')).toEqual([]);
});

it('the secret is nowhere in the page or what the browser keeps', async () => {
  const kept = 'JSON.stringify([localStorage, sessionStorage, document.cookie, document.documentElement.outerHTML])';
  expect(await gate.evaluate<string>(kept)).not.toContain(secret);
});

async function focused(page: Page): Promise<string> {
  return page.evaluate<string>('document.activeElement.innerText ?? ""');
}

/** Presses Tab until the thing with that label has the focus. */
async function tabTo(page: Page, label: string): Promise<void> {
  for (let presses = 0; presses < 20; presses += 1) {
    const name = 'document.activeElement.labels?.[0]?.innerText ?? document.activeElement.innerText ?? ""';
    if ((await page.evaluate<string>(name)).startsWith(label)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Twenty presses of Tab do not lead to "${label}".`);
}
