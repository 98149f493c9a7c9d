/** What would help, another aircraft on a flight, a changed row, and people at stations. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import type { Shapes } from '../support/api-client.js';
import { aSite, DESK, faults, missing, PHONE, secret, type Site } from './site.js';

let clock = '2026-01-15T03:00:00.000Z';
let site: Site;
let page: Page;
let fleet: Shapes['FleetLine'][];

beforeAll(async () => {
  site = await aSite({ now: () => clock });
  clock = '2026-01-15T12:12:00.000Z';
  page = await site.as('brask', { viewport: DESK });
  fleet = (await (await site.server.signIn('brask')).get<Shapes['Fleet']>('/api/fleet')).aircraft;
});
afterAll(() => site.stop());

const of = (mark: string): Shapes['FleetLine'] => fleet.find(({ registration }) => registration === mark)!;

it('says where the answer is no what the least to fix is, and why each row is refused', async () => {
  await page.goto('/control');
  const row = page.getByRole('row').filter({ hasText: 'Q-KED' });
  await row.getByRole('link', { name: 'What would help' }).click();
  const answer = page.getByLabel(/^Answer for QOF 411/);
  expect(await missing(answer, 'What would help', 'Least to fix', /Wing anti-ice valve L \(Q-KED\/\d\)/)).toEqual([]);
  await answer.getByText('Why rows are refused, in the fewest conditions').click();
  expect(await missing(answer, /“No icing is known or forecast on the flight”/)).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await page.setViewportSize(PHONE);
  expect(await faults(page)).toEqual([]);
  await page.setViewportSize(DESK);
});

it('leads to the write-up where one is not answered', async () => {
  await page.goto(`/aircraft/${of('Q-KEB').id}/flights/${of('Q-KEB').nextFlight?.flight.id}`);
  expect(await missing(page.getByRole('main'), 'Before all else', /Answer Q-KEB\/1/)).toEqual([]);
});

it('answers for another aircraft on the flight, at another instant, and stores nothing', async () => {
  await page.goto(`/aircraft/${of('Q-KED').id}/day`);
  await page.getByLabel('Which aircraft flies it').selectOption({ label: 'Q-KEA (Kellwing)' });
  await page.getByText('At another instant than now').click();
  await page.getByLabel('Date asked for').fill('2026-01-15');
  await page.getByLabel('Time asked for').fill('1430');
  await page.getByRole('button', { name: 'What then?' }).click();
  const main = page.getByRole('main');
  expect(await missing(main, /Q-KEA on this flight, as of 15 Jan 2026 14:30/)).toEqual([]);
  expect(await missing(page.getByLabel('Answer for QOF 411, if that were so'), 'nothing open')).toEqual([]);
  expect(await faults(page)).toEqual([]);
});

it('takes what somebody knows of the people at a station, and what holds no longer', async () => {
  await page.goto('/control/stations');
  await page.getByLabel('Station').selectOption('QOM');
  await page.getByLabel('Who').selectOption({ label: 'Wick Straddock' });
  await page.getByLabel('Equipment there').fill('start-valve tool, lamp');
  await page.getByLabel('Where you know it from').fill('telephone 14:10');
  await page.getByRole('button', { name: 'Enter it' }).click();
  const main = page.getByRole('main');
  expect(await missing(main, /Wick Straddock, standing, with start-valve tool, lamp/)).toEqual([]);
  await page.getByRole('button', { name: 'Wick Straddock at Ombersk: holds no longer' }).click();
  await expect.poll(() => main.getByText('start-valve tool, lamp').count(), { timeout: 20_000 }).toBe(0);
  expect(await faults(page)).toEqual([]);
});

it('changes the row of a deferral by a signature', async () => {
  const technician = await site.as('odrin', { viewport: PHONE });
  const { defects } = await (await site.server.signIn('odrin')).get<Shapes['DefectList']>('/api/defects');
  const apu = defects.find(({ registration, entry }) => registration === 'Q-KEP' && entry?.startsWith('49'));
  await technician.goto(`/defects/${apu?.id}`);
  await technician.getByRole('link', { name: 'Change the row' }).click();
  await technician.getByText('This row is signed for it.').waitFor();
  await technician
    .getByRole('button', { name: /^Change to row/ })
    .first()
    .click();
  await technician.getByLabel('Why the row is changed').fill('The flights after this one are no ETOPS flights.');
  expect(await missing(technician.getByRole('main'), /^I change the basis of defect Q-KEP/)).toEqual([]);
  expect(await faults(technician)).toEqual([]);
  await technician.getByLabel('Your secret, to sign this').fill(secret);
  await technician.getByRole('button', { name: /^Sign: change to row/ }).click();
  expect(await missing(technician.getByRole('main'), /^Changed to .* row/)).toEqual([]);
});

it('says that an answer given up at its budget is neither yes nor no', async () => {
  const { id, nextFlight } = of('Q-KEO');
  await page.route(`**/api/aircraft/${id}/answer?*`, async (route) => {
    const verdict = (await (await route.fetch()).json()) as Shapes['Verdict'];
    const reasons = ['The search for rows was given up at its budget of steps, so a better answer may exist.'];
    const words = 'not settled';
    const body = { ...verdict, verdict: 'not-settled', words, reason: 'budget', items: [], work: [], reasons };
    await route.fulfill({ json: body });
  });
  await page.goto(`/aircraft/${id}/flights/${nextFlight?.flight.id}`);
  const answer = page.getByLabel(/^Answer for/);
  expect(
    await missing(answer, 'not settled', /This was not worked out to the end/, /neither a yes nor a no/),
  ).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await page.unrouteAll();
});
