/** A mistyped line of the register, wherever it is written: in the life of a defect or in that of the aircraft. */
import {
  type Act,
  askCorrection,
  askThingCorrection,
  correctThing,
  leaveThingAsWritten,
  lookAndCorrect,
  type Signature,
  stayAsWritten,
  thingsLeftBy,
} from '#deferrals';
import { newId } from '#store';
import type { OpenedDefect } from '../defects/defect-book.js';
import { Problem } from '../http/problem.js';
import type { CorrectionBody } from './bodies.js';
import type { RegisterScene } from './register-scene.js';
import type { DecidedOnRegister } from './decided.js';

export function askCorrectionOf(scene: RegisterScene, body: CorrectionBody, by: Signature): DecidedOnRegister {
  const { life, aircraft, context, opened } = scene;
  const { item, field, now, reason } = body;
  const thing = life.things.find((one) => one.item.id === item);
  if (thing !== undefined) {
    const command = { id: newId(), by, aircraft, item, field, was: thing.item[field], now, reason };
    return { register: askThingCorrection(life, command, context), defects: [] };
  }
  const holders = opened.filter((one) => one.life.left.some(({ id }) => id === item));
  if (holders.length === 0) throw new Problem('not-found', `Nothing by the number ${item} is left on this aircraft.`);
  const defects = holders.map((one) => {
    const was = one.life.left.find(({ id }) => id === item)?.[field] ?? '';
    const command = { id: newId(), by, act: actThatLeft(one, item), item, field, was, now, reason };
    return { id: one.row.id, acts: askCorrection(one.life, command, context) };
  });
  return { register: [], defects };
}

/** A thing that two open items have is put right in both. */
export function lookOf(scene: RegisterScene, asked: string, secondLook: Signature): DecidedOnRegister {
  const { life, aircraft, context } = scene;
  const item = thingAskedOf(scene, asked);
  if (item === null) {
    return { register: correctThing(life, { id: newId(), aircraft, asked, secondLook }, context), defects: [] };
  }
  return inEach(scene, item, ({ life: of }, found) =>
    lookAndCorrect(of, { id: newId(), asked: found, secondLook }, context),
  );
}

/** It is not made in any of the open items that have the thing. */
export function stayOf(
  scene: RegisterScene,
  said: { asked: string; reason: string; by: Signature },
): DecidedOnRegister {
  const { life, aircraft, context } = scene;
  const item = thingAskedOf(scene, said.asked);
  if (item === null) {
    return { register: leaveThingAsWritten(life, { id: newId(), aircraft, ...said }, context), defects: [] };
  }
  return inEach(scene, item, ({ life: of }, found) =>
    stayAsWritten(of, { ...said, id: newId(), asked: found }, context),
  );
}

/** The thing that it is about, where open items have it; null where the register of the aircraft does. */
function thingAskedOf({ opened }: RegisterScene, asked: string): string | null {
  return opened.flatMap((one) => one.life.asked).find(({ id }) => id === asked)?.item ?? null;
}

function inEach(
  { opened }: RegisterScene,
  item: string,
  decide: (one: OpenedDefect, asked: string) => Act[],
): DecidedOnRegister {
  const defects = opened.flatMap((one) => {
    const found = one.life.asked.find((correction) => correction.item === item);
    return found === undefined ? [] : [{ id: one.row.id, acts: decide(one, found.id) }];
  });
  return { register: [], defects };
}

/** The last act that left it: a thing may have been given over and taken again. */
function actThatLeft({ life }: OpenedDefect, item: string): string {
  const act = life.acts.findLast((one) => thingsLeftBy(one).some(({ id }) => id === item));
  if (!act) throw new Error(`No act left ${item}.`);
  return act.id;
}
