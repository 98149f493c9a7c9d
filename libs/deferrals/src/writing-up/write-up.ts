/**
 * A defect is written in the log by a technician, the crew or the cabin. Its day of discovery is the day in the log.
 * 14 CFR 121.563: each irregularity is entered, and answered before the next flight.
 */
import type { Aircraft, WhenFound, WrittenUp } from '../acts.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { isSignature, type Actor, type Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { admitSignature } from '../signing/admit-signature.js';
import { admitTimes } from './admit-times.js';
import { needText } from './need-text.js';

export interface WriteUp extends Command<Actor | Signature> {
  defect: string;
  aircraft: Aircraft;
  origin: WrittenUp['origin'];
  sheet?: string;
  description: string;
  /** System (ATA chapter), two digits. */
  system?: string;
  faultMessage?: string;
  whenFound?: WhenFound;
}

/** Throws Refusal. `life` is the history of a defect of that id, null when there is none. */
export function writeUp(life: DefectLife | null, command: WriteUp, context: Context): WrittenUp[] {
  if (life !== null) throw writtenAlready(life);
  const { defect, aircraft, origin, description, sheet, system, faultMessage, whenFound } = command;
  const act: WrittenUp = {
    kind: 'written-up',
    ...headOf(command, context),
    defect,
    aircraft,
    origin,
    sheet: sheet ?? null,
    description,
    system: system ?? null,
    faultMessage: faultMessage ?? null,
    ...(whenFound === undefined ? {} : { whenFound }),
  };
  begin(act);
  return [act];
}

/** The life that begins with this write-up. Throws Refusal when it cannot. */
export function begin(act: WrittenUp): DefectLife {
  needText('the description of the defect', act.description);
  admitTimes(act);
  const { aircraft, enteredAt } = act;
  admitSignature(act.by, isSignature(act.by) ? 'write-up' : null, { aircraft, enteredAt, act: act.kind });
  return {
    defect: act.defect,
    aircraft,
    acts: [act],
    recordedAt: act.recordedAt,
    occurredAt: act.occurredAt ?? null,
    enteredAt,
    writtenBy: act.by,
    origin: act.origin,
    sheet: act.sheet,
    description: act.description,
    system: act.system,
    faultMessage: act.faultMessage,
    whenFound: act.whenFound ?? null,
    item: null,
    deferral: null,
    bases: [],
    limits: [],
    extensions: [],
    grants: [],
    procedures: [],
    cards: [],
    left: [],
    altered: false,
    asked: [],
    work: null,
    heldBy: null,
    closed: null,
  };
}

export function writtenAlready({ defect, recordedAt }: DefectLife): Refusal<'already-written-up'> {
  return new Refusal('already-written-up', { defect, recordedAt });
}
