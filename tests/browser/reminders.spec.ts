/** An engineer enters a mailbox and sees what became of each reminder: first with the mail server away, then with it back. */
import { createServer, type AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { mailServer, type MailServer } from '../support/mail-server.js';
import { aSite, clockFrom, faults, NARROW, PATIENT, type Site } from './site.js';

let site: Site;
let page: Page;
let mail: MailServer | undefined;
let port: number;

beforeAll(async () => {
  port = await freePort();
  const route = { url: `smtp://127.0.0.1:${port}`, from: 'Proviso <reminders@proviso.example>' };
  site = await aSite({
    now: clockFrom('2026-11-25T09:00:00Z'),
    watch: { mail: route, endpointsInside: true, lookEverySeconds: 1, firstPauseSeconds: 1, everyMs: 50 },
  });
  page = await site.as('sennet', { viewport: NARROW });
  await page.goto('/defects');
  await page.getByRole('link', { name: 'Reminders', exact: true }).click();
  await page.getByRole('heading', { name: 'Reminders', level: 1 }).waitFor();
});

afterAll(async () => {
  await site.stop();
  await mail?.stop();
});

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port: free } = server.address() as AddressInfo;
  await new Promise<void>((resolve) => server.close(() => resolve()));
  return free;
}

/** As often as it takes: the page is read again by opening it. */
async function shows(text: string | RegExp): Promise<void> {
  await expect
    .poll(async () => {
      await page.goto('/reminders');
      await page.getByRole('heading', { name: 'What was sent' }).waitFor();
      return page.getByText(text).count();
    }, PATIENT)
    .toBeGreaterThan(0);
}

it('says so while nobody is reminded, and refuses what is no mailbox beside the field', async () => {
  await page.getByText('Nobody is reminded').waitFor();
  await page.getByRole('textbox', { name: 'Mailbox' }).fill('nobody at all');
  await page.getByLabel('What you call it').fill('at work');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await page.getByText('is no mailbox such as').first().waitFor();
  expect(await page.getByRole('textbox', { name: 'Mailbox' }).getAttribute('aria-invalid')).toBe('true');
});

it('says why the code cannot be sent while the mail server is away, and that nothing goes there before', async () => {
  await page.getByRole('textbox', { name: 'Mailbox' }).fill('sennet@engineers.example');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await page.getByText('at work: sennet@engineers.example').waitFor();
  await shows(/The mail server did not take it/);
  expect(await page.locator('.state.dashed', { hasText: 'Not confirmed' }).count()).toBe(1);
  expect(await page.locator('.state.heavy', { hasText: 'The code is not sent' }).count()).toBe(1);
  expect(await faults(page)).toEqual([]);
});

it('takes the code from the mail, and shows what could not be delivered, by word and shape, and when it is tried next', async () => {
  mail = await mailServer({ port });
  const { arrived, answers } = mail;
  await expect.poll(() => arrived.length, PATIENT).toBeGreaterThan(0);
  answers.push(...Array.from({ length: 500 }, () => 451));
  await page.goto('/reminders');
  await page.getByLabel('Code from the mail').fill(/\d{4} \d{4}/.exec(arrived.at(-1)?.mail.text ?? '')?.[0] ?? '');
  await page.getByRole('button', { name: 'Confirm', exact: true }).click();
  await expect.poll(() => page.getByText('Not confirmed').count(), PATIENT).toBe(0);
  await shows(/^Tried .*The mail server did not take it/);
  expect(await page.locator('.state.heavy', { hasText: /^Not delivered$/ }).count()).toBeGreaterThan(0);
  await page
    .getByText(/Next attempt/)
    .first()
    .waitFor();
  expect(await faults(page)).toEqual([]);
});

it('shows that it was sent once the mail server takes it, and the mail reads as the page does', async () => {
  mail?.answers.splice(0);
  await shows(/Handed over/);
  const taken = mail?.arrived.filter(({ accepted, mail: one }) => accepted && one.subject !== 'Code for reminders');
  expect(taken?.[0]?.to).toEqual(['sennet@engineers.example']);
  expect(taken?.[0]?.mail.subject).toMatch(/^\[invented\] Q-K/);
});

it('tells the secret of an endpoint once, and turns an address off', async () => {
  await page.getByLabel('A program (signed messages)').check();
  await page.getByLabel('Address of the endpoint').fill('http://127.0.0.1:9/reminders');
  await page.getByLabel('What you call it').fill('planning');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await page.getByText(/^whsec_/).waitFor();
  expect(await faults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Turn off planning' }).click();
  await page.getByText('No longer in use (1)').waitFor();
  await page.getByText('No longer in use (1)').click();
  await page.getByText(/planning: .*turned off/).waitFor();
  expect(await page.getByText(/^whsec_/).count()).toBe(1);
  await page.reload();
  await page.getByText('at work: sennet@engineers.example').waitFor();
  expect(await page.getByText(/^whsec_/).count()).toBe(0);
});

it('makes an address for a calendar program, told once', async () => {
  await page.getByLabel('Device that reads it').fill('my telephone');
  await page.getByRole('button', { name: 'Make an address' }).click();
  const address = page.getByText(/\/api\/calendar\/[\w-]{64}\.ics$/);
  await address.waitFor();
  const answer = await fetch(await address.innerText());
  expect([answer.status, (await answer.text()).startsWith('BEGIN:VCALENDAR')]).toEqual([200, true]);
  await page.getByRole('button', { name: 'Revoke my telephone' }).click();
  await expect.poll(() => page.getByRole('button', { name: 'Revoke my telephone' }).count(), PATIENT).toBe(0);
  expect((await fetch(await address.innerText())).status).toBe(404);
});
