/** A second person signs at a step by a passkey, on the telephone of whoever does the step and goes on being signed in. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { doSteps } from '../support/do-card.js';
import { atLocalhost } from './authenticator.js';
import { CardsAtWork } from './cards-at-work.js';
import { faults, missing, secret } from './site.js';

let work: CardsAtWork;
let page: Page;
let card: string;

beforeAll(async () => {
  work = await CardsAtWork.begin('2026-11-25T09:00:00Z');
  page = await atLocalhost(work.site);
  const { odrin, pass } = work;
  const defect = await work.writtenUp('29-13-11', '1');
  const { etag } = await odrin.send('GET', `/api/defects/${defect}`);
  await odrin.post(`/api/defects/${defect}/cards`, { card: 'case-drain-filter' }, { ifMatch: etag });
  const { works } = await odrin.get<Shapes['CardsOfDefect']>(`/api/defects/${defect}/cards`);
  card = `/defects/${defect}/cards/${works[0]?.id}`;
  await doSteps(odrin, works[0]?.id ?? '', { defect, pass, until: 'leak-check' });
});

afterAll(() => work.stop());

const at = (path: string) => `${new URL(page.url()).origin}${path}`;

async function signIn(name: string): Promise<void> {
  await page.getByLabel('Sign-in name').fill(name);
  await page.getByLabel('Secret').fill(secret);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await page.getByRole('navigation', { name: 'Places' }).waitFor();
}

async function passkeyAdded(label: string): Promise<void> {
  await page.goto(at('/you'));
  await page.getByText('Add a passkey', { exact: true }).click();
  await page.getByLabel('What you call it').fill(label);
  await page.getByLabel('Your secret, to sign this').fill(secret);
  await page.getByRole('button', { name: 'Add this passkey' }).click();
  await page.getByRole('button', { name: `Remove ${label}` }).waitFor();
}

async function choose(label: string): Promise<void> {
  await page.getByLabel('Second person, there with you').selectOption({ label });
  await page.getByText(/I am the second person at step/).waitFor();
}

it('two people hold a passkey, and one of them begins the step', async () => {
  await signIn('wick');
  await passkeyAdded('badge of Wick');
  await page.getByRole('button', { name: 'Sign out' }).click();
  await signIn('odrin');
  await passkeyAdded('telephone of Odrin');
  await page.goto(at(card));
  expect(await missing(page, 'The card asks for somebody at the pump switch on the headset.')).toEqual([]);
  await page.getByLabel('Number read on the hydraulic pressure gauge').fill('HG-4');
  await page.getByLabel('hydraulic pressure gauge calibrated until').fill('2027-03-01');
});

it('somebody who holds none is told so, and nothing is asked of anybody', async () => {
  await choose('Tamsel Quorry, technician');
  await page.getByLabel('a passkey of their own').check();
  await page.getByRole('button', { name: 'Begin: the time counts from now' }).click();
  const alert = page.getByRole('alert');
  expect(await missing(alert, 'Tamsel Quorry has no passkey here, so nothing was asked for.')).toEqual([]);
});

it('the one who was named reads what is certified and touches; nothing is typed', async () => {
  await choose('Wick Straddock, technician');
  await page.getByLabel('a passkey of their own').check();
  expect(await missing(page, 'Wick Straddock certifies', 'Odrin Vask stays signed in.')).toEqual([]);
  expect(await page.getByLabel('Secret of Wick Straddock, to sign this').count()).toBe(0);
  expect(await faults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Begin: the time counts from now' }).click();
  await page.getByText(/^(5:00|4:5\d) left$/).waitFor();
});

it('and finds the signature in the own list, with its form; whoever did the step is signed in still', async () => {
  expect(await missing(page.getByRole('link', { name: 'Odrin Vask' }), 'Odrin Vask')).toEqual([]);
  const wick = await work.site.server.signIn('wick');
  const { signatures } = await wick.get<Shapes['Signatures']>('/api/signatures');
  expect(signatures[0]).toMatchObject({ by: 'Wick Straddock', method: 'passkey', verifies: true });
});
