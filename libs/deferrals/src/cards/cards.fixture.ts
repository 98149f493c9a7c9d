/** Work on a card to build tests from: an invented filter change with one step of each kind. A test states what matters. */
import type { Card } from '#mel';
import type { DefectLife } from '../defect-life.js';
import { actor, authorisation, context, signed } from '../invented.fixture.js';
import { proceed } from '../replay.js';
import { type DoStep, doStep, type StepAsked } from './do-step.js';
import { inspectStep } from './inspect-step.js';
import { signCard, type SignCard } from './sign-card.js';
import { startCard } from './start-card.js';
import { stopCard } from './stop-card.js';

export const card = (over: Partial<Card> = {}): Card => ({
  id: 'filter',
  title: 'Change of the case-drain filter',
  purpose: 'rectification',
  reference: { manual: 'INV-AMM', task: '29-11-31 task 4', revision: '12', issuedOn: '2026-01-01' },
  accounts: [
    { id: 'latches', pair: 'unlatch-latch', what: 'cowl latches', where: 'left nacelle', count: 4 },
    {
      id: 'collar',
      pair: 'pull-reset',
      what: 'pump breaker',
      where: 'panel P2, A7',
      kind: 'breaker',
      numbered: true,
      undo: 'remove the collar, push in',
    },
  ],
  steps: [
    { id: 'pull', kind: 'out', text: 'Pull and collar the pump breaker.', account: 'collar' },
    { id: 'unlatch', kind: 'out', text: 'Release the cowl latches.', account: 'latches' },
    { id: 'cool', kind: 'wait', text: 'Let it cool.', lasts: { shownBy: 'the hydraulic page', atLeast: 2 } },
    { id: 'seals', kind: 'renew', text: 'Renew both seals.', part: 'seal', count: 2, licence: ['B1', 'B2'] },
    {
      id: 'level',
      kind: 'measure',
      text: 'Read the level.',
      measure: { id: 'level', what: 'level', unit: 'l', from: 3, to: 4.5 },
    },
    { id: 'reset', kind: 'in', text: 'Remove the collar and reset the breaker.', account: 'collar' },
    {
      id: 'leak',
      kind: 'run',
      text: 'Run the pump and watch.',
      lasts: { minutes: 5 },
      readings: [{ id: 'case', what: 'case temperature', unit: 'C', to: 90 }],
      look: 'No drop at the bowl.',
    },
    { id: 'second', kind: 'inspect', text: 'A second look at bowl and seals.', of: ['seals', 'leak'] },
    { id: 'latch', kind: 'in', text: 'Latch the cowl.', account: 'latches', after: ['second'] },
    { id: 'flush', kind: 'verify', text: 'All latches flush.' },
  ],
  ...over,
});

/** What goes with a step besides its result; `base` is the operator's zone. */
type With = Pick<DoStep, 'second' | 'used'> & { base?: string };

/** A clock that the test moves, and one person after another at the same card. */
export class Bench {
  private minutes = 0;
  private acts = 0;

  constructor(
    public life: DefectLife,
    private readonly day = '2026-01-27T',
  ) {}

  get now(): string {
    const hours = String(8 + Math.floor(this.minutes / 60)).padStart(2, '0');
    return `${this.day}${hours}:${String(this.minutes % 60).padStart(2, '0')}:00Z`;
  }

  /** The work on the card that was started last. */
  get work(): string {
    return this.life.cards.at(-1)?.started.id ?? 'none';
  }

  pass(minutes: number): this {
    this.minutes += minutes;
    return this;
  }

  start(over: Partial<Parameters<typeof startCard>[1]> = {}): this {
    const command = { id: this.id(), by: actor('tech'), on: authorisation('tech'), card: card(), ...over };
    return this.write(startCard(this.life, command, context(this.now)));
  }

  step(step: string, result: StepAsked, person = 'tech', on = authorisation(person), more: With = {}): this {
    const { base = 'UTC', ...said } = more;
    const command = { id: this.id(), by: actor(person), on, work: this.work, step, result, ...said };
    return this.write(doStep(this.life, command, context(this.now, { settings: { base } })));
  }

  /** A second person who signs now. */
  mate(person = 'mate', over: Parameters<typeof signed>[2] = {}): With {
    return { second: signed(person, this.now, over) };
  }

  inspect(step: string, person = 'second', over = {}): this {
    const by = signed(person, this.now, over);
    const command = { id: this.id(), by, work: this.work, step, findings: 'nothing found' };
    return this.write(inspectStep(this.life, command, context(this.now)));
  }

  sign(over: Partial<SignCard> = {}): this {
    const command = { id: this.id(), thenId: this.id(), by: signed('tech', this.now), work: this.work };
    const said = { newerRevision: null, confirmation: null, ...command, ...over };
    return this.write(signCard(this.life, said, context(this.now)));
  }

  stop(reason = 'nobody relieves me', person = 'tech'): this {
    const command = { id: this.id(), thenId: this.id(), by: signed(person, this.now), work: this.work, reason };
    return this.write(stopCard(this.life, command, context(this.now)));
  }

  /** Everything up to a step, as a good technician does it; without a step the whole card, but for its signature. */
  until(last?: string): this {
    for (const [step, how] of GOOD) {
      if (step === last) break;
      how(this);
    }
    return this;
  }

  private id(): string {
    return `c${(this.acts += 1)}`;
  }

  private write(acts: Parameters<typeof proceed>[1]): this {
    this.life = proceed(this.life, acts);
    return this;
  }
}

const GOOD: [step: string, how: (bench: Bench) => unknown][] = [
  ['pull', (on) => on.step('pull', { kind: 'out', count: 1, number: 'C-22' })],
  ['unlatch', (on) => on.step('unlatch', { kind: 'out', count: 4 })],
  ['cool', (on) => on.step('cool', { kind: 'begun', minutes: 12 }).pass(12).step('cool', { kind: 'waited' })],
  ['seals', (on) => on.step('seals', { kind: 'renewed', partNumber: 'S-1', batch: 'B-7', count: 2 })],
  ['level', (on) => on.step('level', { kind: 'measured', value: 3.5, unit: 'l' })],
  ['reset', (on) => on.step('reset', { kind: 'in', count: 1, number: 'C-22' })],
  ['leak', (on) => leak(on)],
  ['second', (on) => on.inspect('second')],
  ['latch', (on) => on.step('latch', { kind: 'in', count: 4 })],
  ['flush', (on) => on.step('flush', { kind: 'done' })],
];

function leak(on: Bench): Bench {
  on.step('leak', { kind: 'begun' }).pass(5);
  on.step('leak', { kind: 'ran', readings: [{ id: 'case', value: 71, unit: 'C' }] });
  return on.step('leak', { kind: 'looked', findings: 'dry' });
}
