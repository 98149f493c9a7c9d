/** What the record alone says of one aircraft: its acts, its defects, what is left on it. */
import { type Act, type DefectLife, type RegisterAct, replay, underZoneData, type ZoneDifference } from '#deferrals';
import type { AircraftRow, LeftItemRow, MelSummary, Recorded } from '#store';
import { columnsOf, firstColumnsOf } from '../../defects/defect-book.js';
import { readPeople, storedFromRecord } from '../../defects/people-in-acts.js';
import { keepRegister } from '../../register/keep-register.js';
import { keepLines } from '../../register/register-book.js';
import { LinesInMemory } from './lines-in-memory.js';

/** Rows by id, each with the columns that can be told from the record. */
export interface Rebuilt {
  defects: Map<string, object>;
  defectActs: Map<string, object>;
  registerActs: Map<string, object>;
  leftItems: Map<string, LeftItemRow>;
}

export interface Found {
  zoneData: ReadonlyMap<string, ZoneDifference[]>;
  revisions: readonly MelSummary[];
}

interface DefectSoFar {
  number: unknown;
  enteredAt: string;
  acts: Act[];
}

/**
 * @param ids of people, by reference
 * @param found what was found by the program and not acted: what newer time-zone data read otherwise, by defect; the MELs
 * @throws Refusal for a history that cannot have happened
 */
export async function rebuildAircraft(
  aircraft: AircraftRow,
  entries: readonly Recorded[],
  ids: ReadonlyMap<string, string>,
  { zoneData, revisions }: Found,
): Promise<Rebuilt> {
  const memory = new LinesInMemory(aircraft.operatorId);
  const [defectActs, registerActs] = [new Map<string, object>(), new Map<string, object>()];
  const soFar = new Map<string, DefectSoFar>();
  const registered: RegisterAct[] = [];
  for (const { entry } of entries) {
    const { id: entryId, who, times, payload } = entry;
    if (!isAct(entry.what, payload['act'])) continue;
    const stored = storedFromRecord(payload['act'], ids) as Act | RegisterAct;
    const personId = who === null ? null : (ids.get(who) ?? who);
    const { id, kind } = stored;
    const told = { kind, at: times.enteredAt, personId, payload: stored, entryId };
    if (entry.what.startsWith('register.')) {
      const act = readPeople<RegisterAct>(stored, new Map());
      await keepLines(memory, aircraft, act, registered);
      registered.push(act);
      registerActs.set(id, { ...told, aircraftId: aircraft.id, seq: registered.length });
      continue;
    }
    const act = readPeople<Act>(stored, new Map());
    const defect = soFar.get(act.defect) ?? { number: payload['number'], enteredAt: times.enteredAt, acts: [] };
    defect.acts.push(act);
    soFar.set(act.defect, defect);
    defectActs.set(id, { ...told, defectId: act.defect, seq: defect.acts.length });
    await keepRegister(memory, aircraft, { id: act.defect }, act, times.enteredAt);
  }
  const defects = new Map(
    [...soFar].map(([id, one]) => [id, rowOf(aircraft, one, zoneData.get(id) ?? [], revisions)]),
  );
  return { defects, defectActs, registerActs, leftItems: memory.lines };
}

function isAct(what: string, act: unknown): act is object {
  return /^(defect|register)\./.test(what) && typeof act === 'object' && act !== null;
}

function rowOf(
  aircraft: AircraftRow,
  { number, enteredAt, acts }: DefectSoFar,
  zoneData: ZoneDifference[],
  revisions: readonly MelSummary[],
): object {
  const life: DefectLife = underZoneData(replay(acts), zoneData);
  const first = firstColumnsOf(aircraft, replay(acts.slice(0, 1)), enteredAt);
  const basis = life.deferral?.basis;
  const revision =
    basis?.kind === 'mel-row'
      ? revisions.find(
          (one) =>
            one.aircraftType === aircraft.type && one.document === basis.document && one.revision === basis.revision,
        )
      : undefined;
  const known = basis?.kind === 'mel-row' ? { melRevisionId: revision?.id ?? null } : {};
  return { ...first, number, ...columnsOf(life, known) };
}
