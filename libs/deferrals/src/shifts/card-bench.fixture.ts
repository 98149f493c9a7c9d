/** Does on the lib what the ledger was asked about, and holds the two against each other. */
import type { Card, CardStep } from '#mel';
import { doStep } from '../cards/do-step.js';
import { inspectStep } from '../cards/inspect-step.js';
import { signCard } from '../cards/sign-card.js';
import { startCard } from '../cards/start-card.js';
import { stopCard } from '../cards/stop-card.js';
import type { DefectLife } from '../defect-life.js';
import { actor } from '../invented.fixture.js';
import { undoLeft } from '../leaving/undo.js';
import { release } from '../rectifying/release.js';
import { restore } from '../rectifying/restore.js';
import { verifyGenerally } from '../rectifying/verify-generally.js';
import { Refusal } from '../refusal.js';
import { gaugeOf, resultOf, secondOf } from './card-entered.fixture.js';
import {
  enter,
  type Ledger,
  ledgerOf,
  mayInspect,
  maySign,
  mayStep,
  mayStop,
  secondIn,
  thingOf,
  type Try,
} from './card-ledger.fixture.js';
import { good, mayStand, type Pen, sign } from './crew.fixture.js';
import { Hangar } from './hangar.fixture.js';

const NEWER = { manual: 'INV-AMM', task: null, revision: '2', issuedOn: '2026-02-01' };
const LOOKED = { toolsAccounted: true, panelsClosed: true, registerChecked: true };

/** Somebody confirmed the card against a revision; with or without the privilege for it. */
export interface Confirming {
  pen: Pen;
  against: '2' | '3';
}

const LISTED = /^(not done: )?step [1-9]\d* "|^still /;

/** Throws Error where a refusal calls a step by anything but its number and its words. */
function namesSteps({ facts, code, message }: Refusal): void {
  const { step, steps = [], missing = [] } = facts;
  const lists = code.startsWith('step-') || code.startsWith('card-') ? [steps, missing].flat() : [];
  const named = step === undefined || /^[1-9]\d* ".+"$/.test(String(step));
  if (!named || lists.some((line) => !LISTED.test(String(line)))) throw new Error(`It names no step: ${message}`);
}

export class CardBench extends Hangar {
  readonly ledgers: Ledger[] = [];
  revised = false;
  /** Work on cards that ended, in order. */
  private readonly ends: string[] = [];
  readonly tally = { signed: 0, stopped: 0, released: 0, refused: 0, steps: 0 };

  /** Throws Error when the lib does not do what the ledger says; a refusal must leave everything as it was. */
  same(what: string, may: boolean, act: () => void): boolean {
    const before = this.lives;
    try {
      act();
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      if (may) throw new Error(`${what} may be done and was refused: ${error.message}`);
      namesSteps(error);
      if (before.some((life, at) => life !== this.lives[at])) throw new Error(`${what} was refused, and half done`);
      this.tally.refused += 1;
      return false;
    }
    if (!may) throw new Error(`${what} may not be done and was admitted.`);
    return true;
  }

  start(defect: number, card: Card, pen: Pen): void {
    const life = this.life(defect);
    const open = this.ledgers.some(
      ({ state, ...one }) => state === 'open' && one.defect === defect && one.card.id === card.id,
    );
    const may =
      life.closed === null && !open && mayStand({ ...pen, early: 0, statement: 'x' }, this.now, 'sign-procedure');
    const id = this.id();
    const said = { id, by: actor(pen.person), on: sign(pen, this.now).authorisation, card };
    const done = this.same('start', may, () => this.write(defect, startCard(life, said, this.given(life.defect))));
    if (done) this.ledgers.push(ledgerOf(defect, id, card));
  }

  step(ledger: Ledger, step: CardStep, asked: Try): boolean {
    const may = mayStep(ledger, step, asked);
    const life = this.life(ledger.defect);
    const second = secondIn(step, asked);
    const id = this.id();
    const { pen, number } = asked;
    const said = {
      id,
      by: actor(pen.person),
      on: sign(pen, this.now).authorisation,
      work: ledger.work,
      step: step.id,
    };
    const result = resultOf(ledger, step, asked);
    const command = { ...said, result, ...secondOf(second, asked), ...gaugeOf(ledger, step, asked) };
    const words = `step ${step.id} of ${ledger.card.id} (${asked.slip})`;
    const done = this.same(words, may, () =>
      this.write(ledger.defect, doStep(life, command, this.given(life.defect))),
    );
    if (!done) return false;
    enter(ledger, step, asked);
    this.tally.steps += 1;
    if (step.kind !== 'out' && step.kind !== 'in') return true;
    this.count(life, step.kind, thingOf(step.account, number), ledger.defect);
    return true;
  }

  /** The physical things, by the ids that the lib gave them. */
  private count(before: DefectLife, way: 'out' | 'in', thing: string, defect: number): void {
    const now = this.life(defect);
    if (way === 'out') {
      const item = now.left.find(({ id }) => !before.left.some((one) => one.id === id));
      if (item) this.things.set(item.id, { item, needs: new Set([now.defect]) });
      return;
    }
    const item = before.left.find(
      ({ kind, where, tag }) => thingOf(kind === 'tool' ? kind : accountAt(where), tag) === thing,
    );
    if (item) this.things.delete(item.id);
  }

  inspect(ledger: Ledger, asked: Try): boolean {
    const look = ledger.card.steps.find(({ kind }) => kind === 'inspect');
    const life = this.life(ledger.defect);
    const said = { id: this.id(), by: sign(asked.pen, this.now), work: ledger.work, step: 'look', findings: 'none' };
    const done = this.same('inspect', mayInspect(ledger, asked), () =>
      this.write(ledger.defect, inspectStep(life, said, this.given(life.defect))),
    );
    if (done && look) ledger.done.add(look.id);
    return done;
  }

  signIt(ledger: Ledger, asked: Try, confirming: Confirming | null): void {
    const { pen } = asked;
    const life = this.life(ledger.defect);
    const confirmed =
      !this.revised || (confirming?.against === '2' && mayStand(confirming.pen, this.now, 'confirm-card'));
    const confirmation = confirming && {
      card: ledger.card.id,
      wrote: '1',
      against: confirming.against,
      by: sign(confirming.pen, this.now),
    };
    const said = { id: this.id(), thenId: this.id(), by: sign(pen, this.now), work: ledger.work };
    const command = { ...said, newerRevision: this.revised ? NEWER : null, confirmation };
    const done = this.same(`sign ${ledger.card.id}`, maySign(ledger, asked) && confirmed, () =>
      this.write(ledger.defect, signCard(life, command, this.given(life.defect))),
    );
    if (!done) return;
    this.end(ledger, 'signed', pen);
    this.tally.signed += 1;
  }

  stop(ledger: Ledger, asked: Try): void {
    const life = this.life(ledger.defect);
    const said = {
      id: this.id(),
      thenId: this.id(),
      by: sign(asked.pen, this.now),
      work: ledger.work,
      reason: 'late',
    };
    const done = this.same('stop', mayStop(ledger, asked), () =>
      this.write(ledger.defect, stopCard(life, said, this.given(life.defect))),
    );
    if (!done) return;
    this.end(ledger, 'stopped', asked.pen);
    this.tally.stopped += 1;
  }

  private end(ledger: Ledger, state: 'signed' | 'stopped', pen: Pen): void {
    Object.assign(ledger, { state, signer: pen.person });
    this.ends.push(ledger.work);
  }

  /** Something that stays is undone by the item; what an open card counted out is not. */
  undo(defect: number, pen: Pen): void {
    const life = this.life(defect);
    const [item] = life.left;
    if (item === undefined) return;
    const byCard = this.ledgers.some(
      ({ state, out, ...one }) =>
        state === 'open' &&
        one.defect === defect &&
        [...out].some(
          ([account, number]) =>
            thingOf(account, number) === thingOf(item.kind === 'tool' ? item.kind : accountAt(item.where), item.tag),
        ),
    );
    const may = life.closed === null && mayStand(pen, this.now, 'sign-procedure') && !byCard;
    const said = { id: this.id(), by: sign(pen, this.now), items: [item.id] };
    const done = this.same('undo', may, () => this.write(defect, undoLeft(life, said, this.given(life.defect))));
    if (!done) return;
    this.things.delete(item.id);
    for (const { defect: of, out } of this.ledgers) if (of === defect) out.delete(accountAt(item.where));
  }

  /** Helpers restore and go over the aircraft as far as they may; then the pen releases, or may not. */
  finish(defect: number, pen: Pen, stating: 'closed' | 'all of it' | 'something'): void {
    const tech = sign(good('arn'), this.now);
    const life = () => this.life(defect);
    const helps = (act: () => void): void => {
      try {
        act();
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
      }
    };
    const given = () => this.given(life().defect);
    helps(() => this.write(defect, restore(life(), { id: this.id(), by: tech, reference: 'AMM' }, given())));
    helps(() => this.write(defect, verifyGenerally(life(), { id: this.id(), by: tech, ...LOOKED }, given())));
    const ended = this.ledgers.filter((one) => one.defect === defect && !one.released && isWork(one));
    const titles = ended.map(({ card }) => card.title);
    const staysOpen = stating === 'closed' ? [] : stating === 'all of it' ? ['work', ...titles] : ['something'];
    const outcome = stating === 'closed' ? ('closed' as const) : ('stays-open' as const);
    const command = { id: this.id(), by: sign(pen, this.now), outcome, staysOpen };
    const may = mayStand(pen, this.now, 'release') && this.mayRelease(defect, ended, pen, stating);
    const done = this.same(`release ${stating}`, may, () => this.write(defect, release(life(), command, given())));
    if (!done) return;
    for (const one of ended) one.released = true;
    if (outcome === 'closed') this.ended.add(life().defect);
    this.tally.released += 1;
  }

  private mayRelease(defect: number, ended: readonly Ledger[], pen: Pen, stating: string): boolean {
    const own = this.ledgers.filter((one) => one.defect === defect);
    const last = ended.toSorted((one, other) => this.ends.indexOf(one.work) - this.ends.indexOf(other.work)).at(-1);
    if (last === undefined || own.some(({ state }) => state === 'open') || this.life(defect).closed !== null)
      return false;
    const left = [...this.things.values()].some(({ needs }) => needs.has(this.life(defect).defect));
    const tools = [...this.things.values()].some(
      ({ item, needs }) => item.kind === 'tool' && needs.has(this.life(defect).defect),
    );
    const unsaid = stating === 'something' && ended.some((one) => one.state === 'stopped' && !this.takenUp(one));
    const people = ended.flatMap(({ signer, hands }) => [
      signer,
      ...hands.flatMap(({ person, second }) => [person, second]),
    ]);
    const alone = people.every((one) => one === null || one === pen.person);
    const complete = stating === 'closed' ? last.state === 'signed' && !left : !unsaid && !tools;
    return complete && (alone || pen.categories.some((one) => one !== 'A'));
  }

  private takenUp({ card, defect, work }: Ledger): boolean {
    const at = this.ledgers.findIndex((one) => one.work === work);
    return this.ledgers
      .slice(at + 1)
      .some((one) => one.defect === defect && one.card.id === card.id && one.state === 'signed');
  }
}

/** A card that was stopped before anything was done on it is no work. */
const isWork = ({ state, hands, done }: Ledger): boolean =>
  state === 'signed' || (state === 'stopped' && hands.length + done.size > 0);

const accountAt = (where: string): string => where.replace('bay of ', '');
