/**
 * One question after another on the page of an answer, on a real server: each is the one that the server would ask next,
 * and after each reply only what still matters is asked. Row P-56 (FAA MMEL T1 Rev 32, 36-11-01: ETOPS to 120 minutes,
 * no icing, flight level 310 or below), SEEN-Q.
 */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Airline, anAirline } from '../journeys/an-airline.js';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { aSite, clockFrom, DESK, faults, missing, NARROW, PATIENT, type Site } from './site.js';

const MEL = readFileSync(new URL('../cases/published-rows-t1.yaml', import.meta.url), 'utf8');

let site: Site;
let airline: Airline;
let commander: ApiClient;
let page: Page;

const leg = (number: string, hour: string) => ({
  number,
  aircraft: 'Q-ABH',
  offBlockAt: `2026-03-10T${hour}:00:00Z`,
  onBlockAt: `2026-03-10T${hour}:50:00Z`,
});

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-03-10T06:00:00Z'), demo: false });
  airline = await anAirline(site.server, {
    code: 'QPR',
    base: 'UTC',
    aircraftType: 'T1',
    settings: { preset: 'easa' },
    people: [
      { signIn: 'ullo', name: 'Ullo Fenn', roles: ['administrator', 'mel-engineer'] },
      { signIn: 'yorvin', name: 'Yorvin Tesk', roles: ['technician'], privileges: ['write-up', 'defer'] },
      { signIn: 'hesk', name: 'Hesk Aldane', roles: ['commander', 'dispatcher'], privileges: ['write-up'] },
    ],
    aircraft: ['Q-ABH'],
    flights: [leg('QPR 1', '09'), leg('QPR 2', '12')],
  });
  await (await site.server.signIn('ullo')).post('/api/mel', { file: 't1.yaml', text: MEL });
  const technician = await site.server.signIn('yorvin');
  const { body } = await technician.post<Shapes['ActDone']>('/api/defects', {
    aircraft: airline.aircraft['Q-ABH'],
    origin: 'crew',
    description: 'Engine 1 bleed does not supply.',
    recordedAt: '2026-03-10T05:40:00Z',
    item: { entry: '36-11-01', units: ['1'] },
  });
  await technician.sign(body.defect.id, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
  commander = await site.server.signIn('hesk');
  page = await site.as('hesk', { viewport: DESK });
});
afterAll(() => site.stop());

const pathOf = (number: string) => `/aircraft/${airline.aircraft['Q-ABH']}/flights/${airline.flights[number]}`;
const formOf = (text: string) => page.locator('form').filter({ hasText: text });
const asksFirst = () => page.getByRole('heading', { name: 'Ask this first' });

function planOf(number: string): Promise<Shapes['QuestionPlan']> {
  const flight = airline.flights[number];
  return commander.get(`/api/aircraft/${airline.aircraft['Q-ABH']}/questions?flight=${flight}`);
}

const KIND: Record<string, string> = { 'flight.etopsMinutes': '0', 'flight.icing': 'none', 'flight.level': '290' };
const BAD: Record<string, string> = { 'flight.etopsMinutes': '180', 'flight.icing': 'known', 'flight.level': '350' };

/** Answers the one form that stands under "Ask this first", or the last that is open. */
async function reply(fact: string, question: string, value: string): Promise<void> {
  const form = formOf(question);
  if (fact === 'flight.icing') await form.getByLabel(value, { exact: true }).check();
  else await form.getByLabel(question).fill(value);
  await form.getByLabel('Where the answer comes from').fill('flight plan 3');
  await form.getByRole('button', { name: 'Answer' }).click();
}

it('asks what the server would ask next, and then only what still matters, until it is settled', async () => {
  await page.goto(pathOf('QPR 1'));
  const asked: string[] = [];
  for (let plan = await planOf('QPR 1'); plan.verdict === 'not-settled'; plan = await planOf('QPR 1')) {
    const { fact, question } = plan.questions[0]!;
    expect(asked).not.toContain(fact);
    const more = plan.questions.length > 1;
    if (more) {
      await asksFirst().waitFor();
      await formOf(question).waitFor();
      // Only the first has a form; what is told of the rest depends on the reply to it.
      expect(await formOf('Where the answer comes from').count()).toBe(1);
      expect(await missing(page.getByRole('main'), / – then ask: /, /– the answer is: may not fly/)).toEqual([]);
    }
    for (const known of asked) {
      const old = plan.questions.map((one) => one.fact).includes(known);
      expect(old, `${known} was answered`).toBe(false);
    }
    if (asked.length === 0) expect(await faults(page)).toEqual([]);
    await reply(fact, question, KIND[fact]!);
    asked.push(fact);
    await expect.poll(() => formOf(question).count(), PATIENT).toBe(0);
  }
  expect(asked.toSorted()).toEqual(Object.keys(KIND).toSorted());
  expect(await missing(page.getByLabel(/^Answer for QPR 1/), 'may fly after work')).toEqual([]);
  expect(await asksFirst().count()).toBe(0);
});

it('asks nothing more once a reply has refused the row, though two facts are still not known', async () => {
  await page.setViewportSize(NARROW);
  await page.goto(pathOf('QPR 2'));
  const before = await planOf('QPR 2');
  expect(before.questions).toHaveLength(3);
  const { fact, question } = before.questions[0]!;
  await asksFirst().waitFor();
  expect(await faults(page)).toEqual([]);
  await reply(fact, question, BAD[fact]!);
  const answer = page.getByLabel(/^Answer for QPR 2/);
  expect(await missing(answer, 'may not fly', 'Least to fix')).toEqual([]);
  expect(await formOf('Where the answer comes from').count()).toBe(0);
  const after = await planOf('QPR 2');
  expect(after).toMatchObject({ verdict: 'may-not-fly', method: 'nothing-to-ask', questions: [], tree: null });
  expect(await faults(page)).toEqual([]);
});
