/** What people do in a random shift. Each command is tried; what the lib admits, the naive account writes down too. */
import type { Act, DocumentOwner, LeftItem } from '../acts.js';
import { raiseInError } from '../answering/raise-in-error.js';
import { defer } from '../deferring/defer.js';
import { moveThings, type Holder } from '../leaving/move-things.js';
import { leaveOnAircraft } from '../leaving/leave.js';
import { undoLeft } from '../leaving/undo.js';
import type { BasisContext } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import type { Privilege, Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { endDocument } from '../register/change-owner.js';
import { findOnAircraft } from '../register/find-on-aircraft.js';
import { fitUnderDocument } from '../register/fit-under-document.js';
import { removeFromAircraft } from '../register/remove-from-aircraft.js';
import { inspect } from '../rectifying/inspect.js';
import { rectify } from '../rectifying/rectify.js';
import { release } from '../rectifying/release.js';
import { restore } from '../rectifying/restore.js';
import { verifyGenerally } from '../rectifying/verify-generally.js';
import { AIRCRAFT as aircraft, actor } from '../invented.fixture.js';
import { good, iso, mayStand, sign, type Pen } from './crew.fixture.js';
import { nameOf, type Hangar } from './hangar.fixture.js';

/** What a command is told; each takes of it what it needs. */
export interface Told {
  /** Which defect, or who gives. */
  index: number;
  /** Who takes. */
  to: number;
  pen: Pen;
  thing: { kind: LeftItem['kind']; where: string; tag: string };
  document: DocumentOwner;
  minutes: number;
  together: boolean;
}

/** Tries it; a refusal leaves everything as it was. A signature that may not stand must have been refused. */
function tried(hangar: Hangar, pen: Pen | null, privilege: Privilege, act: () => void): void {
  const before = hangar.admitted;
  try {
    act();
  } catch (error) {
    if (error instanceof Refusal) return;
    throw error;
  }
  if (pen === null || hangar.admitted === before) return;
  if (!mayStand(pen, hangar.now, privilege)) {
    throw new Error(`A signature was accepted that may not stand: ${JSON.stringify(pen)} at ${hangar.now}`);
  }
}

export const PLACES = ['P1-A1', 'P1-A2', 'P2-B1', 'gear 1', 'gear 2'];
export const KINDS: LeftItem['kind'][] = ['breaker', 'lock-pin', 'tool'];
export const DOCUMENTS: DocumentOwner[] = [
  { kind: 'modification', reference: 'M1', until: null },
  { kind: 'permit', reference: 'P1', until: iso(300) },
];

const fitted = (hangar: Hangar, items: readonly LeftItem[], need: string | null): void => {
  for (const item of items) {
    const there = hangar.things.get(item.id);
    if (there === undefined) hangar.things.set(item.id, { item, needs: new Set(need === null ? [] : [need]) });
    else if (need !== null) there.needs.add(need);
  }
};

const known = (hangar: Hangar, { kind, reference, until }: DocumentOwner): void => {
  hangar.documents.set(nameOf({ kind, reference, until }), until === null ? null : 300);
};

type Doing = (hangar: Hangar, told: Told) => void;

const thingOf = (hangar: Hangar, { thing }: Told): LeftItem => ({ id: hangar.id(), ...thing, undo: 'put it back' });

/** An act on one of the defects, signed by the pen. */
const onDefect =
  (privilege: Privilege, act: (hangar: Hangar, index: number, by: Signature, told: Told) => void): Doing =>
  (hangar, told) => {
    const { pen } = told;
    tried(hangar, pen, privilege, () => act(hangar, told.index % hangar.lives.length, sign(pen, hangar.now), told));
  };

function undoFirst(hangar: Hangar, index: number, by: Signature): void {
  const life = hangar.life(index);
  const items = life.left.slice(0, 1).map(({ id }) => id);
  hangar.write(index, undoLeft(life, { id: hangar.id(), by, items }, hangar.given(life.defect)));
  for (const id of items) hangar.things.delete(id);
}

const ALL_SEEN = { toolsAccounted: true, panelsClosed: true, registerChecked: true };

/** A writer of one act on one defect. */
const writes =
  (act: (life: DefectLife, said: { id: string; by: Signature }, given: BasisContext, index: number) => Act[]) =>
  (hangar: Hangar, index: number, by: Signature): void => {
    const life = hangar.life(index);
    hangar.write(index, act(life, { id: hangar.id(), by }, hangar.given(life.defect), index));
  };

const rectifies = writes((life, said, given, index) =>
  rectify(
    life,
    { ...said, workDone: 'replaced', reference: 'AMM', complete: true, inspectionAsked: index % 2 === 0 },
    given,
  ),
);
const restores = writes((life, said, given) => restore(life, { ...said, reference: 'AMM' }, given));
const verifies = writes((life, said, given) => verifyGenerally(life, { ...said, ...ALL_SEEN }, given));
const inspects = writes((life, said, given) => inspect(life, { ...said, findings: 'none' }, given));

function releases(hangar: Hangar, index: number, by: Signature, { pen }: Told): void {
  const life = hangar.life(index);
  const performers = new Set(life.work?.done.map((work) => work.by.person) ?? []);
  const command = { id: hangar.id(), by, outcome: 'closed' as const };
  hangar.write(index, release(life, command, hangar.given(life.defect)));
  if (pen.categories.includes('A') && [...performers].some((one) => one !== pen.person)) {
    throw new Error(`${pen.person} released with category A what others did`);
  }
  hangar.releases += 1;
  hangar.ended.add(life.defect);
}

/** What helpful people do to bring a defect to its release, which the pen then signs or may not. */
function finishes(hangar: Hangar, index: number, by: Signature, told: Told): void {
  const [tech, other] = [sign(good('arn'), hangar.now), sign(good('bel'), hangar.now)];
  while (hangar.life(index).left.length > 0) undoFirst(hangar, index, tech);
  for (const step of [rectifies, restores, verifies]) step(hangar, index, tech);
  inspects(hangar, index, other);
  releases(hangar, index, by, told);
}

/** The helpers of `finishes` sign for themselves: only its last signature is that of the pen. */
const finish: Doing = (hangar, told) => {
  try {
    finishes(hangar, told.index % hangar.lives.length, sign(told.pen, hangar.now), told);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return;
  }
  if (!mayStand(told.pen, hangar.now, 'release')) throw new Error(`${told.pen.person} may not release and did`);
};

/** Every command of a shift, by its name. */
export const DOINGS: Record<string, Doing> = {
  wait: (hangar, { minutes }) => {
    hangar.now += minutes;
  },
  'write up': (hangar) => {
    if (hangar.lives.length < 4) hangar.writeUp();
  },
  defer: onDefect(
    'defer',
    writes((life, said, given) => defer(life, { ...said, basis: { kind: 'mel-row', row: '1' } }, given)),
  ),
  leave: onDefect('sign-procedure', (hangar, index, by, told) => {
    const life = hangar.life(index);
    const left = thingOf(hangar, told);
    const said = { id: hangar.id(), by, items: [left] };
    hangar.write(index, leaveOnAircraft(life, said, hangar.given(life.defect)));
    fitted(hangar, [left], life.defect);
  }),
  undo: onDefect('sign-procedure', undoFirst),
  rectify: onDefect('sign-procedure', rectifies),
  restore: onDefect('sign-procedure', restores),
  'go over': onDefect('sign-procedure', verifies),
  inspect: onDefect('inspect', (hangar, index, by) => {
    const performers = hangar.life(index).work?.done.map((work) => work.by.person) ?? [];
    inspects(hangar, index, by);
    if (performers.includes(by.person)) throw new Error(`${by.person} inspected own work`);
  }),
  release: onDefect('release', releases),
  finish,
  'raise in error': onDefect('release', (hangar, index, by) => {
    const life = hangar.life(index);
    hangar.write(index, raiseInError(life, { id: hangar.id(), by, reason: 'wrong' }, hangar.given(life.defect)));
    hangar.ended.add(life.defect);
  }),
  find: (hangar, told) =>
    tried(hangar, null, 'write-up', () => {
      const found = thingOf(hangar, told);
      const said = { id: hangar.id(), by: { ...actor('crew') }, aircraft, items: [found] };
      hangar.enter(findOnAircraft(hangar.register, said, hangar.given('register')));
      fitted(hangar, [found], null);
    }),
  'fit under a document': (hangar, told) =>
    tried(hangar, told.pen, 'sign-procedure', () => {
      const left = thingOf(hangar, told);
      const owner = told.document;
      const said = { id: hangar.id(), by: sign(told.pen, hangar.now), aircraft, items: [left], owner };
      hangar.enter(fitUnderDocument(hangar.register, said, hangar.given('register')));
      known(hangar, owner);
      fitted(hangar, [left], nameOf(owner));
    }),
  'remove from the register': (hangar, { pen }) =>
    tried(hangar, pen, 'sign-procedure', () => {
      const items = hangar.register.things.slice(0, 1).map(({ item: { id } }) => id);
      const said = { id: hangar.id(), by: sign(pen, hangar.now), aircraft, items };
      if (items.length === 0) return;
      hangar.enter(removeFromAircraft(hangar.register, said, hangar.given('register')));
      for (const id of items) hangar.things.delete(id);
    }),
  'end a document': (hangar, { pen, document: owner }) =>
    tried(hangar, pen, 'sign-procedure', () => {
      const said = { id: hangar.id(), by: sign(pen, hangar.now), aircraft, owner, reason: 'withdrawn' };
      hangar.enter(endDocument(hangar.register, said, hangar.given('register')));
      for (const { needs } of hangar.things.values()) needs.delete(nameOf(owner));
    }),
  move: (hangar, told) => tried(hangar, told.pen, 'sign-procedure', () => move(hangar, told)),
};

/** Of the last holder to the next: the register stands behind the defects, and takes for the document. */
function move(hangar: Hangar, { index: from, to, pen, document, together }: Told): void {
  const [thing] = hangar.register.things;
  const giver = hangar.lives[from];
  const taker = hangar.lives[to];
  const holder: Holder =
    giver === undefined
      ? { kind: 'register', life: hangar.register, owner: thing?.owner ?? null }
      : { kind: 'defect', life: giver };
  const next: Holder =
    taker === undefined
      ? { kind: 'register', life: hangar.register, owner: document }
      : { kind: 'defect', life: taker };
  const item = giver === undefined ? thing?.item : giver.left[0];
  if (item === undefined) return;
  const said = { ids: { gives: hangar.id(), takes: hangar.id() }, by: sign(pen, hangar.now), items: [item.id] };
  const moved = moveThings({ ...said, from: holder, to: next, together, reason: 'needed' }, hangar.given('none'));
  hangar.enter(moved.register);
  if (taker !== undefined) hangar.write(to, moved.takes);
  if (giver !== undefined) hangar.write(from, moved.gives);
  const needs = hangar.things.get(item.id)?.needs ?? new Set<string>();
  if (!together) needs.delete(giver === undefined ? (thing?.owner ? nameOf(thing.owner) : '') : giver.defect);
  if (taker === undefined) known(hangar, document);
  needs.add(taker === undefined ? nameOf(document) : taker.defect);
}
