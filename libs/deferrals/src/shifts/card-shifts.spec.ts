/**
 * Hundreds of random shifts of work by cards: steps in any order, skipped, on the paper of the wrong person, waits cut
 * short, wrong counts and numbers, cards stopped, handed over, left behind a newer manual. Before every command a naive
 * ledger says whether it may be done; the lib must say the same, in both directions. 145.A.48; 145.A.50; 66.A.20.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadCards, type Card } from '#mel';
import type { LicenceCategory, Privilege } from '../people.js';
import { CardBench, type Confirming } from './card-bench.fixture.js';
import { isInTurn, type Ledger, SLIPS, type Slip, thingOf, type Try } from './card-ledger.fixture.js';
import { type Block, BLOCKS, cardOf, MINUTES } from './card-plan.fixture.js';
import { ALL, good, type Pen, PEOPLE } from './crew.fixture.js';

interface Told {
  defect: number;
  page: number;
  step: number;
  /** Takes the first step that may be done, instead of any. */
  next: boolean;
  pen: Pen;
  second: Pen;
  slip: Slip;
  number: string;
  minutes: number;
  confirming: Confirming | null;
  stating: 'closed' | 'all of it' | 'something';
}

const minute = fc.integer({ min: 0, max: 120 });
const CONFIRMS: Privilege[] = [...ALL, 'confirm-card'];

const WRONG = {
  holder: fc.constantFrom(...PEOPLE),
  operator: fc.constant('Other Air'),
  type: fc.constant('INV-2'),
  privileges: fc.subarray(ALL),
  from: minute,
  until: minute,
  revoked: minute,
  early: fc.integer({ min: -30, max: 120 }),
  statement: fc.constant(' '),
};

/** Mostly one thing, so that nothing else hides it. */
const wrongs: fc.Arbitrary<Partial<Pen>> = fc.oneof(
  { weight: 1, arbitrary: fc.record(WRONG, { requiredKeys: [] }) },
  ...Object.entries(WRONG).map(([key, one]) => ({ weight: 1, arbitrary: fc.record({ [key]: one }) })),
);

const pens: fc.Arbitrary<Pen> = fc
  .tuple(
    fc.constantFrom(...PEOPLE),
    fc.oneof({ weight: 4, arbitrary: fc.constant({}) }, { weight: 1, arbitrary: wrongs }),
    fc.constantFrom<LicenceCategory[]>(['B1'], ['B1'], ['B1'], ['A'], ['B2']),
  )
  .map(([person, wrong, categories]) => ({ ...good(person), categories, ...wrong }));

const confirmings: fc.Arbitrary<Confirming> = fc.record({
  pen: fc
    .tuple(fc.constantFrom(...PEOPLE), fc.constantFrom(CONFIRMS, CONFIRMS, ALL))
    .map(([person, privileges]) => ({ ...good(person), privileges })),
  against: fc.constantFrom('2', '2', '3'),
});

const told: fc.Arbitrary<Told> = fc.record({
  defect: fc.nat(1),
  page: fc.nat(3),
  step: fc.nat(30),
  next: fc.constantFrom(true, true, true, false),
  pen: pens,
  second: pens,
  slip: fc.oneof(
    { weight: 5, arbitrary: fc.constant<Slip>('none') },
    { weight: 1, arbitrary: fc.constantFrom(...SLIPS) },
  ),
  number: fc.constantFrom('1', '2', '3'),
  minutes: fc.integer({ min: 1, max: 2 * MINUTES }),
  confirming: fc.option(confirmings, { freq: 3 }),
  stating: fc.constantFrom('closed', 'closed', 'all of it', 'something'),
});

const tryOf = (bench: CardBench, { pen, second, slip, number }: Told): Try => ({
  pen,
  second,
  slip,
  number,
  now: bench.now,
  onAircraft: new Set(bench.ledgers.flatMap(({ out }) => [...out].map(([account, tag]) => thingOf(account, tag)))),
});

/** The number that stands on what comes in; a person reads it, and slips now and then. */
const numberFor = (ledger: Ledger, step: Card['steps'][number], number: string): string =>
  step.kind === 'in' ? (ledger.out.get(step.account) ?? number) : number;

function stepOn(bench: CardBench, ledger: Ledger, said: Told): boolean {
  const { steps } = ledger.card;
  const step = (said.next && steps.find((one) => isInTurn(ledger, one))) || steps[said.step % steps.length];
  if (step === undefined) return false;
  if (step.kind === 'inspect') return bench.inspect(ledger, tryOf(bench, said));
  return bench.step(ledger, step, { ...tryOf(bench, said), number: numberFor(ledger, step, said.number) });
}

/** Good people do all that is left of a card, as long as nothing of another card is in the way. */
function workThrough(bench: CardBench, ledger: Ledger, number: string): void {
  const helper = { ...good('arn'), categories: ['B1'] as LicenceCategory[] };
  for (let tries = 0; tries < 40; tries += 1) {
    const step = ledger.card.steps.find((one) => isInTurn(ledger, one));
    if (step === undefined) return;
    const person = step.kind === 'inspect' ? 'dun' : 'arn';
    const said = { pen: { ...helper, person, holder: person }, second: good('cor'), slip: 'none' as const, number };
    const done = stepOn(bench, ledger, { ...said, next: true } as Told);
    bench.now += MINUTES;
    if (!done) return;
  }
}

const KINDS = [
  'start',
  'step',
  'step',
  'step',
  'work through',
  'work through',
  'wait',
  'inspect',
  'sign',
  'sign',
  'stop',
  'undo',
  'revise',
  'finish',
  'finish',
] as const;

function doing(kind: (typeof KINDS)[number], bench: CardBench, cards: readonly Card[], said: Told): void {
  const defect = said.defect % bench.lives.length;
  const open = bench.ledgers.filter(({ state }) => state === 'open');
  // Now and then a card that has ended.
  const ledger =
    open[said.page % Math.max(open.length, 1)] ?? bench.ledgers[said.page % Math.max(bench.ledgers.length, 1)];
  if (kind === 'wait') bench.now += said.minutes;
  else if (kind === 'start') bench.start(defect, cards[said.page % cards.length] as Card, said.pen);
  else if (kind === 'undo') bench.undo(defect, said.pen);
  else if (kind === 'finish') bench.finish(defect, said.pen, said.stating);
  else if (kind === 'revise') bench.revised = bench.revised || said.step === 0;
  else if (ledger === undefined) return;
  else if (kind === 'step') stepOn(bench, ledger, said);
  else if (kind === 'inspect') bench.inspect(ledger, tryOf(bench, said));
  else if (kind === 'work through') workThrough(bench, ledger, said.number);
  else if (kind === 'sign') bench.signIt(ledger, tryOf(bench, said), said.confirming);
  else bench.stop(ledger, tryOf(bench, said));
}

/** What must hold after every command, whoever did what. */
function watch(bench: CardBench): void {
  const gates = bench.gates();
  expect(gates.orphans).toHaveLength(bench.orphans().length);
  expect(new Set(bench.lines().map(({ id }) => id))).toEqual(new Set(bench.things.keys()));
  const toGo = bench.ledgers.filter(({ state, defect }) => state === 'open' && bench.life(defect).work === null);
  expect(gates.openWork.filter((line) => line.includes('work card not signed'))).toHaveLength(toGo.length);
}

const blocks: fc.Arbitrary<Block[]> = fc.array(
  fc.record<Block>({
    kind: fc.constantFrom(...BLOCKS),
    free: fc.boolean(),
    two: fc.constantFrom('no', 'anybody', 'B1'),
    gauge: fc.boolean(),
  }),
  { minLength: 1, maxLength: 4 },
);

const tally = { signed: 0, stopped: 0, released: 0, refused: 0, steps: 0 };

function shift(plans: readonly Block[][], commands: readonly (readonly [(typeof KINDS)[number], Told])[]): void {
  const cards = plans.map((plan, at) => cardOf(`c${at}`, plan));
  const bench = new CardBench();
  bench.writeUp();
  bench.writeUp();
  for (const [kind, said] of commands) {
    doing(kind, bench, cards, said);
    watch(bench);
  }
  for (const key of Object.keys(tally) as (keyof typeof tally)[]) tally[key] += bench.tally[key];
}

const plans = fc.array(blocks, { minLength: 1, maxLength: 3 });

describe('random work by cards', () => {
  it('is on cards that a library takes', () => {
    fc.assert(
      fc.property(blocks, (plan) => {
        const head = { format: 'proviso-cards/1', document: 'X', operator: 'X', aircraftType: 'X', revision: '1' };
        const loaded = loadCards({ ...head, effectiveOn: '2026-01-01', cards: [cardOf('c', plan)] }, 'c.yaml');
        expect('errors' in loaded ? loaded.errors : []).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  it('is admitted exactly where a naive ledger admits it, and never leaves an orphan behind', () => {
    fc.assert(
      fc.property(
        plans,
        fc.array(fc.tuple(fc.constantFrom(...KINDS), told), { minLength: 20, maxLength: 60 }),
        shift,
      ),
      { numRuns: 300, unbiased: true },
    );
    const enough = { signed: 80, stopped: 80, released: 25, refused: 1500, steps: 800 };
    expect(Object.entries(enough).filter(([key, least]) => tally[key as keyof typeof tally] < least)).toEqual([]);
  });
});
