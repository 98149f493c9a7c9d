/** Reads the register of an aircraft from its acts, and writes what was decided: acts, record, signatures, lines. */
import {
  type Actor,
  EMPTY_REGISTER,
  isSignature,
  type RegisterAct,
  type RegisterLife,
  replayRegister,
  type Signature,
} from '#deferrals';
import type { AircraftRow, Tx } from '#store';
import { knownPeople } from '../defects/defect-book.js';
import { readPeople, recordedPeople, storedPeople } from '../defects/people-in-acts.js';
import { keepSignature, signerOfAct } from '../people/kept-signature.js';
import { addThings, changeThings, type KeepsLines, ownedBy, removeThings } from './keep-register.js';

export async function registerLifeOf(tx: Tx, { id }: Pick<AircraftRow, 'id'>): Promise<RegisterLife> {
  const rows = await tx.register.acts(id);
  if (rows.length === 0) return EMPTY_REGISTER;
  const payloads = rows.map(({ payload }) => payload);
  const people = await knownPeople(tx, payloads);
  return replayRegister(payloads.map((payload) => readPeople<RegisterAct>(payload, people)));
}

/** Lock the aircraft first. */
export async function writeRegisterActs(
  tx: Tx,
  aircraft: AircraftRow,
  life: RegisterLife,
  acts: readonly RegisterAct[],
): Promise<void> {
  const all = [...life.acts];
  for (const act of acts) {
    await writeAct(tx, aircraft, act, all);
    all.push(act);
  }
}

async function writeAct(
  tx: Tx,
  aircraft: AircraftRow,
  act: RegisterAct,
  before: readonly RegisterAct[],
): Promise<void> {
  const { enteredAt, recordedAt, occurredAt, kind, id } = act;
  const by: Actor | Signature = signerOfAct<Actor | Signature>(act);
  const people = await knownPeople(tx, [act]);
  const entry = await tx.record.append({
    who: by.person,
    authorisation: isSignature(by) ? by.authorisation.number : null,
    organisation: by.organisation,
    what: `register.${kind}`,
    aircraft: { id: aircraft.id, registration: aircraft.registration },
    times: { ...(occurredAt === undefined ? {} : { occurredAt }), recordedAt, enteredAt },
    payload: { act: recordedPeople(act, people) },
  });
  const stored = storedPeople(act);
  const place = {
    aircraftId: aircraft.id,
    seq: before.length + 1,
    kind,
    at: enteredAt,
    personId: by.person,
    entryId: entry.id,
  };
  await tx.register.addAct({ ...place, id, payload: stored });
  if (isSignature(by)) await keepSignature(tx, entry, by);
  await keepLines(tx, aircraft, act, before);
}

/** @param before the acts that were written already: a correction says what it puts right in the one that asked for it */
export async function keepLines(
  tx: KeepsLines,
  aircraft: Pick<AircraftRow, 'id'>,
  act: RegisterAct,
  before: readonly RegisterAct[],
): Promise<void> {
  const by = act.by.person;
  const now = act.enteredAt;
  switch (act.kind) {
    case 'fitted':
      return addThings(tx, { aircraft, items: act.items, owner: act.owner, under: null, by, now });
    case 'found':
      return addThings(tx, { aircraft, items: act.items, owner: null, under: null, by, now });
    case 'removed':
      return removeThings(tx, act.items, by, now);
    case 'removal-seen':
      return changeThings(tx, act.items, () => ({ verifiedBy: by, verifiedAt: now }));
    case 'adopted':
      return changeThings(
        tx,
        act.items.map(({ id }) => id),
        () => ownedBy(act.owner),
      );
    case 'handed-on':
      return changeThings(tx, act.items, () => ownedBy(act.to));
    case 'document-ended': {
      const rows = await tx.register.ofAircraft(aircraft.id);
      const under = rows.filter(
        ({ ownedBy: number, ownerKind }) => number === act.owner.reference && ownerKind === act.owner.kind,
      );
      return changeThings(
        tx,
        under.map(({ id }) => id),
        () => ownedBy(null),
      );
    }
    case 'thing-corrected': {
      const asked = before.find(({ id }) => id === act.asked);
      if (asked?.kind !== 'thing-correction-asked') throw new Error(`Act ${act.id} corrects what nobody asked for.`);
      const right = asked.field === 'tag' ? { tag: asked.now } : { place: asked.now };
      return changeThings(tx, [asked.item], () => right);
    }
    case 'thing-correction-asked':
    case 'thing-stays-as-written':
    case 'shift-given':
    case 'shift-taken':
      return Promise.resolve();
  }
}
