/** A house's first day in the browser: the first administrator, an aircraft, the MEL, a technician, the first deferral. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.js';
import { plainList } from '../support/plain-list.js';
import { aSite, DESK, faults, missing, said, type Site } from './site.js';

const OWN = 'nine lanterns over a quiet harbour';
const TYPE = 'Ambrel';
const MEL = plainList('Newhouse Air', [{ number: '33-11-01', title: 'Reading light 33-11-01', category: 'C' }]);

let site: Site;
let office: Page;

beforeAll(async () => {
  site = await aSite({ now: () => new Date().toISOString(), demo: false });
});

afterAll(() => site.stop());

/** Signs in with a first secret and chooses an own one. */
async function begin(name: string, first: string): Promise<Page> {
  const page = await site.visitor({ viewport: DESK });
  await page.getByLabel('Sign-in name').fill(name);
  await page.getByLabel('Secret').fill(first);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.getByLabel('The first secret').fill(first);
  await page.getByLabel('The new one').fill(`${OWN} ${name}`);
  await page.getByRole('button', { name: 'Change my secret' }).click();
  await page.getByRole('navigation', { name: 'Places' }).waitFor();
  return page;
}

/** The first administrator makes an account. @returns its first secret */
async function account(name: string, signIn: string, role: string): Promise<string> {
  await office.goto('/people');
  await office.getByText('Make an account').click();
  await office.getByLabel('Name', { exact: true }).fill(name);
  await office.getByLabel('Sign-in name').fill(signIn);
  await office.getByLabel('Organisation', { exact: true }).selectOption({ index: 1 });
  await office.getByLabel(role).first().check();
  await office.getByRole('button', { name: 'Make the account' }).click();
  return (await office.locator('.done-box .registration').innerText()).trim();
}

it('a fresh server says that nobody can sign in, and which command makes the first', async () => {
  const page = await site.visitor();
  expect(await missing(page, 'Nobody can sign in here yet.', /operator add --code/)).toEqual([]);
  expect(await faults(page)).toEqual([]);
});

it('the first administrator chooses a secret, and sees what is still to do', async () => {
  const options = {
    code: 'QNW',
    name: 'Newhouse Air',
    base: 'Europe/Paris',
    preset: 'easa',
    approval: 'QX-AOC-7',
    administrator: 'Ada Brenn',
    'sign-in': 'ada',
    database: site.server.ownerUrl,
  };
  const line = Object.entries(options).flatMap(([name, value]) => [`--${name}`, value]);
  const { stdout } = await run(['operator', 'add', ...line]);
  office = await begin('ada', /^ {4}(\S{23})$/m.exec(stdout)?.[1] ?? '');
  expect(await missing(office, 'Before Newhouse Air can judge its first aircraft:', 'Enter its aircraft')).toEqual(
    [],
  );
  expect(await faults(office)).toEqual([]);
});

it('enters a station and an aircraft', async () => {
  await office.getByRole('link', { name: 'Enter the stations it flies to' }).click();
  await office.getByLabel('Code').fill('qaa');
  await office.getByLabel('Its name').fill('Aldermouth');
  await office.getByRole('button', { name: 'Enter the station' }).click();
  await office.getByRole('heading', { name: 'Aldermouth (QAA)' }).waitFor();
  expect(await faults(office)).toEqual([]);
  await office.goto('/control/aircraft');
  await office.getByLabel('Registration').fill('q nwa');
  await office.getByLabel('Type', { exact: true }).fill(TYPE);
  await office.getByLabel('I know which configurations').check();
  await office.getByLabel('Based at').selectOption('QAA');
  await office.getByRole('button', { name: 'Enter the aircraft' }).click();
  expect(await missing(office, /must be capital letters, digits and hyphens/)).toEqual([]);
  await office.getByLabel('Registration').fill('q-nwa');
  await office.getByRole('button', { name: 'Enter the aircraft' }).click();
  await office.getByRole('link', { name: 'Q-NWA' }).waitFor();
  expect(await missing(office, /No MEL is loaded for its type: it cannot be judged\./)).toEqual([]);
  expect(await faults(office)).toEqual([]);
});

it('a MEL engineer loads the MEL: a bad file by the names of its errors, then a good one', async () => {
  const page = await begin('mela', await account('Mela Strand', 'mela', 'MEL engineer'));
  await page.goto('/mel');
  const file = (text: string) => ({ name: 'mel.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });
  await page.getByLabel('The file').setInputFiles(file(MEL.replace('2026-01-01', 'soon')));
  await page.getByRole('button', { name: 'Check it and put it in force' }).click();
  expect(await missing(page.getByRole('alert'), /effective on/i)).toEqual([]);
  await page.getByLabel('The file').setInputFiles(file(MEL));
  await page.getByRole('button', { name: 'Check it and put it in force' }).click();
  expect(await missing(page, 'In force.')).toEqual([]);
  expect(await faults(page)).toEqual([]);
});

it('quality authorises a technician', async () => {
  const technician = await account('Tess Arden', 'tess', 'technician');
  const quality = await begin('quin', await account('Quin Aster', 'quin', 'quality'));
  await quality.goto('/people');
  const card = quality.locator('li.card', { has: quality.getByRole('heading', { name: 'Tess Arden' }) });
  await card.getByText('Change the account of Tess Arden').click();
  await card.getByText('Grant Tess Arden an authorisation').click();
  await card.getByLabel('Its number').fill('QNW-L-1');
  await card.getByLabel('Organisation').selectOption({ index: 1 });
  await card.getByLabel(TYPE).check();
  await card.getByLabel('B1').check();
  await card.getByLabel('write up').check();
  await card.getByLabel('defer').check();
  await card.getByLabel('release').check();
  await quality.getByLabel('Your secret, to sign this').fill(`${OWN} quin`);
  await quality.getByRole('button', { name: 'Sign: authorise Tess Arden' }).click();
  expect(await missing(card, 'QNW-L-1')).toEqual([]);
  await deferBy(await begin('tess', technician));
});

/** The technician writes up and defers, as on any other day. */
async function deferBy(page: Page): Promise<void> {
  await page.getByRole('link', { name: /Q-NWA/ }).click();
  await page.getByRole('link', { name: 'Write up a defect' }).click();
  await page.getByLabel('What is wrong').fill('Reading light at seat 3 out.');
  await page.getByRole('button', { name: 'Write it up' }).click();
  await page
    .getByRole('link', { name: /Reading light 33-11-01/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'Choose row 1' }).click();
  await page.getByLabel('Your secret, to sign this').fill(`${OWN} tess`);
  await page.getByRole('button', { name: 'Sign: defer' }).click();
  expect(await missing(said(page), /^Deferred under MEL 33-11-01 row 1/)).toEqual([]);
}

it('everything is done then, and the fleet shows the first open item', async () => {
  const told = office.waitForResponse(/\/api\/opening$/);
  await office.goto('/control');
  await told;
  await office.getByRole('link', { name: 'Reading light 33-11-01' }).waitFor();
  expect(await office.getByText('can judge its first aircraft').count()).toBe(0);
  expect(await faults(office)).toEqual([]);
});

it('control plans a flight, and it is judged', async () => {
  const page = await begin('cole', await account('Cole Hatt', 'cole', 'maintenance control'));
  await page.getByRole('link', { name: 'Q-NWA' }).click();
  await page.getByRole('link', { name: 'Flights planned' }).click();
  await page.getByLabel('Flight number').fill('qn 101');
  await page.getByLabel('From').selectOption('QAA');
  await page.getByLabel('To', { exact: true }).selectOption('QAA');
  const day = new Date(Date.now() + 86_400_000).toISOString().slice(0, 10);
  await page.getByLabel('Date off blocks').fill(day);
  await page.getByLabel('Time off blocks').fill('08:00');
  await page.getByLabel('Date on blocks').fill(day);
  await page.getByLabel('Time on blocks').fill('09:10');
  await page.getByRole('button', { name: 'Plan the flight' }).click();
  expect(await missing(page, 'QN 101')).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await page.goto('/control');
  expect(await missing(page.getByRole('row', { name: /Q-NWA/ }), 'QN 101', /may fly/i)).toEqual([]);
});

it('somebody of another house is invited by a code, and takes it up signed', async () => {
  const other = ['--code', 'QOT', '--name', 'Otherhouse', '--base', 'UTC', '--preset', 'faa'];
  const first = ['--administrator', 'Otto Vane', '--sign-in', 'otto', '--database', site.server.ownerUrl];
  const { stdout } = await run(['operator', 'add', ...other, ...first]);
  const otto = await begin('otto', /^ {4}(\S{23})$/m.exec(stdout)?.[1] ?? '');
  await otto.goto('/people');
  await otto.getByText('Invite somebody who has an account').click();
  await otto.getByLabel('technician').locator('visible=true').check();
  await otto.getByRole('button', { name: 'Make the invitation' }).click();
  const code = (await otto.locator('.done-box .registration').innerText()).trim();
  expect(await faults(otto)).toEqual([]);
  await office.goto('/you');
  await office.getByText('Take up an invitation').click();
  await office.getByLabel('Code of the invitation').fill(code);
  await office.getByRole('button', { name: 'See what it is for' }).click();
  await office.getByText(/^I take up the invitation of Otherhouse/).waitFor();
  await office.getByLabel('Your secret, to sign this').locator('visible=true').fill(`${OWN} ada`);
  expect(await faults(office)).toEqual([]);
  await office.getByRole('button', { name: 'Sign: work for Otherhouse' }).click();
  await office.getByRole('link', { name: 'Change operator' }).waitFor();
  await otto.getByLabel('technician').locator('visible=true').check();
  await otto.getByRole('button', { name: 'Make the invitation' }).click();
  await expect.poll(() => otto.locator('.done-box .registration').innerText()).not.toContain(code);
  await otto.getByText(/^Waits to be taken up, as technician/).waitFor();
  const house = (await site.server.store.operatorsServed()).find((one) => one.code === 'QOT');
  await site.server.store.withOperator(house?.id ?? '', null, async (tx) => {
    for (const { id, version } of await tx.invitations.open())
      await tx.invitations.change(id, version, { untilAt: new Date().toISOString() });
  });
  await otto.reload();
  await otto.getByText('Invite somebody who has an account').click();
  await otto.getByText('Lets nobody in: its time is over').waitFor();
  expect(await faults(otto)).toEqual([]);
});
