/** Newer time-zone data, as the engineer sees it and confirms it. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startOfDayHere } from '#intervals';
import { aSite, clockFrom, faults, NARROW, secret, type Site } from './site.js';

let site: Site;

/** The days of one operator begin an hour sooner than the demo was signed with. */
beforeAll(async () => {
  const startOfDayIn = (day: string, base: string): string =>
    new Date(Date.parse(startOfDayHere(day, base)) - (base === 'Europe/Athens' ? 3_600_000 : 0)).toISOString();
  site = await aSite({ now: clockFrom('2026-11-25T09:00:00Z'), zoneData: { tzdb: '2098a', startOfDayIn } });
});

afterAll(() => site.stop());

it('both ends stand on the page with the one that counts, and are confirmed by signature', async () => {
  const page = await site.as('sennet', { viewport: NARROW });
  await page.goto('/zone-data');
  const row = page.getByRole('row').filter({ hasText: 'Q-KEC/1' });
  await row.waitFor();
  const text = (await row.innerText()).replace(/\s+/g, ' ');
  expect(text).toContain('before 26 Nov 2026 23:00');
  expect(text).toContain('the stricter of both');
  expect(await faults(page)).toEqual([]);
  await page.getByLabel('Secret').fill(secret);
  await page.getByRole('button', { name: 'Confirm the newer ends' }).click();
  await page.getByText('No deadline waits for a confirmation.').waitFor();
  expect(await page.getByText('not yet').count()).toBe(0);
});

it('somebody who may not confirm is told who does', async () => {
  const page = await site.as('odrin', { viewport: NARROW });
  await page.goto('/zone-data');
  await page.getByText('No deadline waits for a confirmation.').waitFor();
  expect(await page.getByRole('button', { name: 'Confirm the newer ends' }).count()).toBe(0);
});
