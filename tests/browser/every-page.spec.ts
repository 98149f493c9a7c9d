/** Every page as axe, a narrow screen and a glove find it; and what must stand on each of them. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { doSteps } from '../support/do-card.js';
import { aSite, clockFrom, DESK, faults, type Look, NARROW, PATIENT, type Site } from './site.js';

const LOOKS: [name: string, look: Look][] = [
  ['a narrow telephone', { viewport: NARROW }],
  ['a tablet', { viewport: { width: 820, height: 1180 } }],
  ['a desk at night', { viewport: DESK, colorScheme: 'dark' }],
];

/** Some seventy pages, each gone through by axe, on a machine that does other work. */
const MANY_PAGES_MS = 360_000;

let site: Site;
let addresses: string[];

/** Pages that a technician does not get. */
const OF_THE_OFFICE = ['/people', '/record', '/record/keeping', '/more'];

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-11-25T09:00:00Z') });
  addresses = await everyAddress();
});

afterAll(() => site.stop());

/** One address of every kind of page, on aircraft that differ. */
async function everyAddress(): Promise<string[]> {
  const control = await site.server.signIn('brask');
  const { aircraft } = await control.get<Shapes['Fleet']>('/api/fleet');
  const { defects } = await control.get<Shapes['DefectList']>('/api/defects');
  const unlike = aircraft.filter(({ registration }) => ['Q-KEA', 'Q-KED', 'Q-KEP'].includes(registration));
  const ofFleet = unlike.flatMap(({ id, nextFlight }) => [
    `/aircraft/${id}`,
    ...(nextFlight
      ? [
          `/aircraft/${id}/flights/${nextFlight.flight.id}`,
          `/aircraft/${id}/flights/${nextFlight.flight.id}/acceptance`,
        ]
      : []),
  ]);
  const item = (registration: string): string => {
    const found = defects.find((one) => one.registration === registration);
    if (!found) throw new Error(`${registration} has no open item.`);
    return `/defects/${found.id}`;
  };
  const plane = `/aircraft/${aircraft[3]?.id}`;
  const [asked, deferred] = [item('Q-KEB'), item('Q-KEO')];
  return [
    '/aircraft',
    '/control',
    '/control/swap',
    '/control/stations',
    '/control/aircraft',
    '/control/flights',
    '/mel',
    '/defects',
    '/repeats',
    '/cards',
    '/cards/revisions',
    '/cards/library',
    '/operators',
    '/reminders',
    '/zone-data',
    '/movements',
    '/settings',
    '/settings/hourClock',
    '/you',
    '/more',
    '/record',
    '/people',
    '/nowhere/at/all',
    ...ofFleet,
    `${plane}/write-up`,
    `${plane}/status-sheet`,
    `${plane}/flown`,
    `${plane}/plan`,
    `${plane}/flown/enter`,
    `${plane}/engines`,
    `${plane}/left`,
    `${plane}/left/found`,
    `${plane}/left/removed`,
    `${plane}/left/seen`,
    `${plane}/left/moves`,
    `${plane}/left/fitted`,
    `${plane}/left/ended-documents`,
    `${plane}/left/corrections`,
    `${plane}/left/second-looks`,
    `${plane}/left/as-written`,
    `${plane}/left/hand-overs`,
    `${plane}/left/hand-overs-taken`,
    asked,
    `${asked}/entries`,
    `${asked}/entries/73-33-11`,
    `${asked}/recurrence`,
    `${asked}/document`,
    `${asked}/rectification`,
    `${asked}/no-fault-found`,
    `${asked}/raised-in-error`,
    `${asked}/joining`,
    `${asked}/correction`,
    `${asked}/second-look`,
    `${asked}/as-written`,
    deferred,
    `${deferred}/work/80-12-11/1/M1`,
    `${deferred}/work/80-12-11/1/M2`,
    `${deferred}/work/80-12-11/1/placard`,
    `${deferred}/undone`,
    `${deferred}/test`,
    `${deferred}/inspection`,
    `${deferred}/restoration`,
    `${deferred}/verification`,
    `${deferred}/swap`,
    `${deferred}/release`,
    `${deferred}/unit`,
    ...(await cardsAt(asked)),
  ];
}

/** A card that is half-worked, with a breaker out and a wait that counts down. */
async function cardsAt(item: string): Promise<string[]> {
  const odrin = await site.server.signIn('odrin');
  const defect = item.replace('/defects/', '');
  const start = { ifMatch: await odrin.seen(defect) };
  await odrin.post(`/api${item}/cards`, { card: 'breaker-reset' }, start);
  const { works } = await odrin.get<Shapes['CardsOfDefect']>(`/api${item}/cards`);
  const work = works[0]?.id ?? '';
  await doSteps(odrin, work, { defect, pass: () => undefined, until: 'cool' });
  const wait = { work, step: 'cool', result: 'begun' };
  await odrin.post(`/api${item}/card-steps`, wait, { ifMatch: await odrin.seen(defect) });
  return [`${item}/cards/${work}`, `${item}/cards/${work}/stop`];
}

/** Until everything that the page asks for is there. */
async function openAt(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await expect.poll(() => page.getByText('Reading…').count(), PATIENT).toBe(0);
}

const ON_EVERY_PAGE = [
  'INVENTED for demonstration, never for flight.',
  'Legal original: the paper log.',
  'never replaces, the approved MEL, the maintenance manual, the commander',
  'Local regulation prevails.',
];

describe.each(LOOKS)('on %s', (_, look) => {
  it(
    'axe finds nothing, nothing is wider than the screen and everything pressed fits a glove',
    async () => {
      const page = await site.as('odrin', look);
      const found: string[] = [];
      for (const address of addresses) {
        await openAt(page, address);
        found.push(...(await faults(page)));
      }
      const office = await site.as('ulla', look);
      for (const address of OF_THE_OFFICE) {
        await openAt(office, address);
        found.push(...(await faults(office)));
      }
      const visitor = await site.visitor(look);
      await visitor.getByRole('heading', { name: 'Sign in' }).waitFor();
      found.push(...(await faults(visitor)));
      expect(found).toEqual([]);
    },
    MANY_PAGES_MS,
  );
});

it('every page says what is invented, which record is the original, and what Proviso does not replace', async () => {
  const page = await site.as('odrin');
  const titles = new Map<string, string>();
  for (const address of addresses) {
    await openAt(page, address);
    const text = await page.locator('body').innerText();
    expect(
      ON_EVERY_PAGE.filter((words) => !text.includes(words)),
      address,
    ).toEqual([]);
    expect(await page.getByRole('heading', { level: 1 }).count(), address).toBe(1);
    titles.set(address, await page.title());
  }
  expect([...titles.values()].filter((title) => !title.endsWith(' - Proviso'))).toEqual([]);
  expect(titles.get('/control')).not.toBe(titles.get('/defects'));
});

it('nothing is asked of any other host', async () => {
  const page = await site.as('odrin');
  const hosts = new Set<string>();
  page.on('request', (request) => hosts.add(new URL(request.url()).origin));
  for (const address of addresses.slice(0, 8)) await openAt(page, address);
  expect([...hosts]).toEqual([new URL(site.server.url).origin]);
});
