/** What people do in a random shift. Each command is tried; what the lib admits, the naive account writes down too. */
import fc from 'fast-check';
import type { Act, DocumentOwner, LeftItem } from '../acts.js';
import { raiseInError } from '../answering/raise-in-error.js';
import { defer } from '../deferring/defer.js';
import { moveThings, type Holder } from '../leaving/move-things.js';
import { leaveOnAircraft } from '../leaving/leave.js';
import { undoLeft } from '../leaving/undo.js';
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
import { good as helper, iso, mayStand, pens, sign, type Pen } from './crew.fixture.js';
import { nameOf, type Hangar } from './hangar.fixture.js';

export interface Command {
  check(): boolean;
  run(model: object, hangar: Hangar): void;
  toString(): string;
}

type Watch = (hangar: Hangar) => void;

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

const PLACES = ['P1-A1', 'P1-A2', 'P2-B1', 'gear 1', 'gear 2'];
const KINDS: LeftItem['kind'][] = ['breaker', 'lock-pin', 'tool'];
const DOCUMENTS: DocumentOwner[] = [
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

/** Every command of a shift; the watch is told after each, admitted or not. */
export function shiftsWatchedBy(watch: Watch): fc.Arbitrary<Command>[] {
  const pick = fc.nat(3);
  const things = fc.tuple(fc.constantFrom(...KINDS), fc.constantFrom(...PLACES), fc.constantFrom('1', '2', '3'));
  const documents = fc.constantFrom(...DOCUMENTS);
  const command = <Args extends unknown[]>(
    name: string,
    run: (hangar: Hangar, ...args: Args) => void,
    ...args: { [Index in keyof Args]: fc.Arbitrary<Args[Index]> }
  ): fc.Arbitrary<Command> =>
    fc.tuple<Args>(...args).map((chosen) => ({
      check: () => true,
      run: (_, hangar) => {
        run(hangar, ...chosen);
        watch(hangar);
      },
      toString: () => `${name}(${chosen.map((one) => JSON.stringify(one)).join(', ')})`,
    }));
  const item = (hangar: Hangar, [kind, where, tag]: [LeftItem['kind'], string, string]): LeftItem => ({
    id: hangar.id(),
    kind,
    where,
    tag,
    undo: 'put it back',
  });
  const some = (hangar: Hangar, index: number): number => index % Math.max(1, hangar.lives.length);
  const onDefect = (
    name: string,
    privilege: Privilege,
    act: (hangar: Hangar, index: number, pen: Pen, by: ReturnType<typeof sign>) => void,
  ): fc.Arbitrary<Command> =>
    command<[number, Pen]>(
      name,
      (hangar, index, pen) => {
        if (hangar.lives.length === 0) return;
        const at = some(hangar, index);
        tried(hangar, pen, privilege, () => act(hangar, at, pen, sign(pen, hangar.now)));
      },
      pick,
      pens,
    );
  const undoFirst = (hangar: Hangar, index: number, by: ReturnType<typeof sign>): void => {
    const life = hangar.life(index);
    const items = life.left.slice(0, 1).map(({ id }) => id);
    hangar.write(index, undoLeft(life, { id: hangar.id(), by, items }, hangar.given(life.defect)));
    for (const id of items) hangar.things.delete(id);
  };
  return [
    command<[number]>('wait', (hangar, minutes) => (hangar.now += minutes), fc.integer({ min: 1, max: 90 })),
    command<[]>('write up', (hangar) => {
      if (hangar.lives.length < 4) hangar.writeUp();
    }),
    onDefect('defer', 'defer', (hangar, index, _, by) => {
      const life = hangar.life(index);
      const basis = { kind: 'mel-row' as const, row: '1' };
      hangar.write(index, defer(life, { id: hangar.id(), by, basis }, hangar.given(life.defect)));
    }),
    command<[number, Pen, [LeftItem['kind'], string, string]]>(
      'leave',
      (hangar, index, pen, thing) => {
        if (hangar.lives.length === 0) return;
        const at = some(hangar, index);
        tried(hangar, pen, 'sign-procedure', () => {
          const life = hangar.life(at);
          const left = item(hangar, thing);
          const said = { id: hangar.id(), by: sign(pen, hangar.now), items: [left] };
          hangar.write(at, leaveOnAircraft(life, said, hangar.given(life.defect)));
          fitted(hangar, [left], life.defect);
        });
      },
      pick,
      pens,
      things,
    ),
    onDefect('undo', 'sign-procedure', (hangar, index, _, by) => undoFirst(hangar, index, by)),
    onDefect('rectify', 'sign-procedure', (hangar, index, _, by) => {
      const life = hangar.life(index);
      const said = { workDone: 'replaced', reference: 'AMM', complete: true, inspectionAsked: index % 2 === 0 };
      hangar.write(index, rectify(life, { id: hangar.id(), by, ...said }, hangar.given(life.defect)));
    }),
    onDefect('restore', 'sign-procedure', (hangar, index, _, by) => {
      const life = hangar.life(index);
      hangar.write(index, restore(life, { id: hangar.id(), by, reference: 'AMM' }, hangar.given(life.defect)));
    }),
    onDefect('go over', 'sign-procedure', (hangar, index, _, by) => {
      const life = hangar.life(index);
      const all = { toolsAccounted: true, panelsClosed: true, registerChecked: true };
      hangar.write(index, verifyGenerally(life, { id: hangar.id(), by, ...all }, hangar.given(life.defect)));
    }),
    onDefect('inspect', 'inspect', (hangar, index, pen, by) => {
      const life = hangar.life(index);
      const performers = life.work?.done.map((work) => work.by.person) ?? [];
      hangar.write(index, inspect(life, { id: hangar.id(), by, findings: 'none' }, hangar.given(life.defect)));
      if (performers.includes(pen.person)) throw new Error(`${pen.person} inspected own work`);
    }),
    onDefect('release', 'release', (hangar, index, pen, by) => {
      const life = hangar.life(index);
      const performers = new Set(life.work?.done.map((work) => work.by.person) ?? []);
      const command_ = { id: hangar.id(), by, outcome: 'closed' as const };
      hangar.write(index, release(life, command_, hangar.given(life.defect)));
      if (pen.categories.includes('A') && [...performers].some((one) => one !== pen.person)) {
        throw new Error(`${pen.person} released with category A what others did`);
      }
      hangar.releases += 1;
      hangar.ended.add(life.defect);
    }),
    onDefect('finish', 'release', (hangar, index, pen, by) => {
      if (!mayStand(pen, hangar.now, 'release')) return;
      const [tech, other] = [helper('arn'), helper('bel')];
      const step = (act: (life: DefectLife, said: { id: string; by: Signature }) => Act[], who = tech): void => {
        const said = { id: hangar.id(), by: sign(who, hangar.now) };
        hangar.write(index, act(hangar.life(index), said));
      };
      const given = () => hangar.given(hangar.life(index).defect);
      while (hangar.life(index).left.length > 0) undoFirst(hangar, index, sign(tech, hangar.now));
      const work = { workDone: 'replaced', reference: 'AMM', complete: true, inspectionAsked: true };
      step((life, said) => rectify(life, { ...said, ...work }, given()));
      step((life, said) => restore(life, { ...said, reference: 'AMM' }, given()));
      const all = { toolsAccounted: true, panelsClosed: true, registerChecked: true };
      step((life, said) => verifyGenerally(life, { ...said, ...all }, given()));
      const performers = hangar.life(index).work?.done.map((done) => done.by.person) ?? [];
      if (performers.includes('bel')) return;
      step((life, said) => inspect(life, { ...said, findings: 'none' }, given()), other);
      const life = hangar.life(index);
      hangar.write(index, release(life, { id: hangar.id(), by, outcome: 'closed' }, given()));
      hangar.releases += 1;
      hangar.ended.add(life.defect);
    }),
    onDefect('raised in error', 'release', (hangar, index, _, by) => {
      const life = hangar.life(index);
      hangar.write(index, raiseInError(life, { id: hangar.id(), by, reason: 'wrong' }, hangar.given(life.defect)));
      hangar.ended.add(life.defect);
    }),
    command<[[LeftItem['kind'], string, string]]>(
      'find',
      (hangar, thing) =>
        tried(hangar, null, 'write-up', () => {
          const found = item(hangar, thing);
          const said = { id: hangar.id(), by: actor('crew'), aircraft, items: [found] };
          hangar.enter(findOnAircraft(hangar.register, said, hangar.given('register')));
          fitted(hangar, [found], null);
        }),
      things,
    ),
    command<[Pen, [LeftItem['kind'], string, string], DocumentOwner]>(
      'fit under document',
      (hangar, pen, thing, owner) =>
        tried(hangar, pen, 'sign-procedure', () => {
          const left = item(hangar, thing);
          const said = { id: hangar.id(), by: sign(pen, hangar.now), aircraft, items: [left], owner };
          hangar.enter(fitUnderDocument(hangar.register, said, hangar.given('register')));
          known(hangar, owner);
          fitted(hangar, [left], nameOf(owner));
        }),
      pens,
      things,
      documents,
    ),
    command<[Pen]>(
      'remove from the register',
      (hangar, pen) =>
        tried(hangar, pen, 'sign-procedure', () => {
          const items = hangar.register.things.slice(0, 1).map(({ item: { id } }) => id);
          if (items.length === 0) return;
          const said = { id: hangar.id(), by: sign(pen, hangar.now), aircraft, items };
          hangar.enter(removeFromAircraft(hangar.register, said, hangar.given('register')));
          for (const id of items) hangar.things.delete(id);
        }),
      pens,
    ),
    command<[Pen, DocumentOwner]>(
      'document ends',
      (hangar, pen, owner) =>
        tried(hangar, pen, 'sign-procedure', () => {
          const said = { id: hangar.id(), by: sign(pen, hangar.now), aircraft, owner, reason: 'withdrawn' };
          hangar.enter(endDocument(hangar.register, said, hangar.given('register')));
          for (const { needs } of hangar.things.values()) needs.delete(nameOf(owner));
        }),
      pens,
      documents,
    ),
    command<[number, number, Pen, DocumentOwner, boolean]>(
      'move',
      (hangar, from, to, pen, document, together) =>
        tried(hangar, pen, 'sign-procedure', () => move(hangar, from, to, pen, document, together)),
      fc.nat(4),
      fc.nat(4),
      pens,
      documents,
      fc.boolean(),
    ),
  ];
}

/** Of the last holder to the next: the register stands behind the defects, and takes for the document. */
function move(hangar: Hangar, from: number, to: number, pen: Pen, document: DocumentOwner, together: boolean): void {
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
