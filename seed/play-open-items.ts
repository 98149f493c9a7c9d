/** Plays the open items as acts, each at its own time, decided by the rules and written as the server writes them. */
import {
  type Act,
  type Context,
  defer,
  type DefectLife,
  fitPlacard,
  handOver,
  identify,
  type Privilege,
  proceed,
  recordTest,
  rectify,
  release,
  removePlacard,
  replay,
  restore,
  type RowOffered,
  type Signature,
  signProcedure,
  verifyGenerally,
  writeUp,
} from '#deferrals';
import { type Mel, readMel, rowsBrought, workKey } from '#mel';
import { type AircraftRow, type DefectRow, newId, type Tx } from '#store';
import { actorOf, livesOf, settingsOf, signatureOf, writeActs } from '../apps/server/src/index.js';
import { dayIn, type DemoOptions, type Ids, idOf } from './loading.js';
import { instantOf } from './planned-flights.js';
import { type CombinationJudged, readSeedFile, type Seed, type SeedAct } from './seed-files.js';

type Operator = Seed['operator']['operators'][number];

interface Stage {
  tx: Tx;
  seed: Seed;
  operator: Operator;
  ids: Ids;
  mel: Mel;
  aircraft: AircraftRow;
  dayZero: string;
  tzdb: string;
}

interface Played {
  row: DefectRow | null;
  life: DefectLife | null;
}

export async function playOpenItems(options: DemoOptions, seed: Seed, operator: Operator, ids: Ids): Promise<void> {
  const { store, folder, now, tzdb } = options;
  const read = readMel(JSON.stringify(readSeedFile(folder, operator.mel)), operator.mel);
  if ('errors' in read) throw new Error(`${operator.mel} does not load`);
  const dayZero = dayIn(now, operator.base);
  for (const { mark, items, acts } of seed.openItems.aircraft) {
    const aircraftId = ids.aircraft.get(mark);
    if (aircraftId === undefined) continue;
    await store.withOperator(ids.operator, null, async (tx) => {
      for (const item of items) {
        let played: Played = { row: null, life: null };
        for (const act of item.acts) {
          const aircraft = await tx.aircraft.lock(aircraftId);
          if (!aircraft) throw new Error(`aircraft ${mark} is not there`);
          const stage = { tx, seed, operator, ids, mel: read.mel, aircraft, dayZero, tzdb };
          played = await play(stage, played, act);
        }
      }
      const aircraft = await tx.aircraft.get(aircraftId);
      if (!aircraft) throw new Error(`aircraft ${mark} is not there`);
      const stage = { tx, seed, operator, ids, mel: read.mel, aircraft, dayZero, tzdb };
      for (const act of acts ?? []) await judgeCombination(stage, act);
    });
  }
}

async function play(stage: Stage, { row, life }: Played, told: SeedAct): Promise<Played> {
  const { tx, seed, dayZero, aircraft, tzdb } = stage;
  const now = instantOf(told.at, dayZero, seed);
  const settings = settingsOf(await tx.operators.current(), tzdb).deferral;
  const acts = await decide(stage, life, told, { now, settings, elsewhere: [] });
  const after = life === null ? proceed(replay(acts.slice(0, 1)), acts.slice(1)) : proceed(life, acts);
  const melRevisionId = (await tx.mel.inForce(aircraft.type))?.id ?? null;
  const written = await writeActs(tx, { aircraft, row, acts, life: after, now, melRevisionId });
  return { row: written, life: after };
}

async function decide(stage: Stage, life: DefectLife | null, told: SeedAct, context: Context): Promise<Act[]> {
  const id = newId();
  if (told.act === 'written-up') return writtenUp(stage, told, context);
  if (life === null) throw new Error(`${told.act} comes before the write-up`);
  switch (told.act) {
    case 'deferred':
      return deferred(stage, life, told, context);
    case 'procedure-signed':
      return procedureSigned(stage, life, told, context);
    case 'placard-fitted': {
      const placard = life.deferral?.basis.placard;
      if (!placard) throw new Error('a placard is fitted that no row asks for');
      const by = await signer(stage, told.by, 'sign-procedure', context, 'I fitted the placard at the place named.');
      return fitPlacard(life, { id, by, ...placard, tag: told.tag }, context);
    }
    case 'placard-removed': {
      const item = life.left.find(({ tag }) => tag === told.tag)?.id ?? told.tag;
      const by = await signer(stage, told.by, 'sign-procedure', context, 'I removed the placard.');
      return removePlacard(life, { id, by, item }, context);
    }
    case 'handed-over': {
      const to = (await stage.tx.people.member(idOf(stage.ids.person, told.to)))?.name ?? told.to;
      const by = await actorOf(stage.tx, idOf(stage.ids.person, told.by), 'maintenance-control');
      return handOver(life, { id, by, to, note: told.note }, context);
    }
    case 'rectification': {
      const by = await signer(stage, told.by, 'sign-procedure', context, 'I carried out the work described.');
      return rectify(life, { ...told, id, by, parts: [told.part] }, context);
    }
    case 'tested': {
      const by = await signer(stage, told.by, 'sign-procedure', context, 'I carried out the test described.');
      return recordTest(life, { id, by, test: told.test, result: told.result }, context);
    }
    case 'restored': {
      const by = await signer(stage, told.by, 'sign-procedure', context, 'Nothing altered for the defect remains.');
      return restore(life, { id, by, reference: told.reference }, context);
    }
    case 'released': {
      const { releaseWording } = settingsOf(await stage.tx.operators.current(), stage.tzdb);
      const by = await signer(stage, told.by, 'release', context, releaseWording);
      const goneOver = await signer(stage, told.by, 'sign-procedure', context, 'I went over the aircraft.');
      const all = { toolsAccounted: true, panelsClosed: true, registerChecked: true };
      const verified = verifyGenerally(life, { id: newId(), by: goneOver, ...all }, context);
      return [...verified, ...release(proceed(life, verified), { id, by, outcome: told.outcome }, context)];
    }
  }
}

async function writtenUp(stage: Stage, told: SeedAct & { act: 'written-up' }, context: Context): Promise<Act[]> {
  const { tx, ids, aircraft, operator } = stage;
  const role = told.origin === 'crew' ? 'commander' : told.origin === 'cabin' ? 'cabin' : 'technician';
  const by = await actorOf(tx, idOf(ids.person, told.by), role);
  const { registration, type } = aircraft;
  const { origin, sheet, system, faultMessage, description } = told;
  const said = { origin, sheet, system, faultMessage, description };
  const of = { registration, type, operator: operator.code };
  return writeUp(null, { id: newId(), defect: newId(), by, aircraft: of, ...said }, context);
}

async function deferred(
  stage: Stage,
  life: DefectLife,
  told: SeedAct & { act: 'deferred' },
  context: Context,
): Promise<Act[]> {
  const { mel, aircraft, tx } = stage;
  const offered = offeredRow(mel, aircraft, told.entry, told.row);
  const statement = `I defer the defect on the basis of MEL ${told.entry} row ${told.row}.`;
  const by = await signer(stage, told.by, 'defer', context, statement);
  const concurrence = await signer(stage, told.concurs, 'concur', context, `I concur: ${statement}`);
  const item = { entry: told.entry, subEntry: offered.subEntry.id, units: told.units };
  const identified = identify(life, { id: newId(), by, item, installed: offered.subEntry.units }, context);
  const known = proceed(life, identified);
  const opened = await livesOf(tx, await tx.defects.ofAircraft(aircraft.id));
  const others = opened.map((one) => one.life).filter(({ defect }) => defect !== life.defect);
  const basis = { kind: 'mel-row' as const, row: told.row };
  return [
    ...identified,
    ...defer(known, { id: newId(), by, basis, concurrence }, { ...context, offered, others, used: {} }),
  ];
}

async function procedureSigned(
  stage: Stage,
  life: DefectLife,
  told: SeedAct & { act: 'procedure-signed' },
  context: Context,
): Promise<Act[]> {
  const basis = life.deferral?.basis;
  if (basis?.kind !== 'mel-row') throw new Error('a procedure is signed without a row');
  const work = workKey(basis.entry, basis.row, told.work);
  const leaves = basis.procedures.find(({ id }) => id === told.work)?.leaves ?? [];
  const left = leaves.map((one, index) => ({ id: newId(), ...one, tag: told.tags[index] ?? 'none' }));
  const statement = `I carried out ${work} as the approved manual says.`;
  const by = await signer(stage, told.by, 'sign-procedure', context, statement);
  return signProcedure(life, { id: newId(), by, work, leaves: left }, context);
}

async function judgeCombination(stage: Stage, told: CombinationJudged): Promise<void> {
  const { tx, ids, aircraft, seed, dayZero } = stage;
  const now = instantOf(told.at, dayZero, seed);
  const opened = await livesOf(tx, await tx.defects.open(aircraft.id));
  const items = opened.map(({ life }) => ({
    defect: life.defect,
    entry: life.item?.entry ?? null,
    row: life.deferral?.basis.kind === 'mel-row' ? life.deferral.basis.row : null,
  }));
  const personId = idOf(ids.person, told.by);
  const entry = await tx.record.append({
    who: personId,
    authorisation: null,
    organisation: null,
    what: 'judgement.given',
    aircraft: { id: aircraft.id, registration: aircraft.registration },
    times: { enteredAt: now },
    payload: { judgement: 'combination', accepted: told.accepted, note: told.note, items },
  });
  await tx.judgements.add({
    aircraftId: aircraft.id,
    judgement: 'combination',
    accepted: told.accepted,
    personId,
    role: 'maintenance-control',
    covers: { items },
    at: now,
    entryId: entry.id,
  });
}

function offeredRow(mel: Mel, aircraft: AircraftRow, number: string, id: string): RowOffered {
  const entry = mel.entry(number);
  const found = mel.row(number, id, aircraft);
  if (!entry || !found) throw new Error(`the MEL offers ${aircraft.registration} no row ${id} of ${number}`);
  const { document, revision } = mel.content;
  return { document, revision, entry, ...found, brings: rowsBrought(mel, found.row, aircraft) };
}

async function signer(
  { tx, ids, operator, aircraft }: Stage,
  person: string,
  privilege: Privilege,
  { now }: Context,
  statement: string,
): Promise<Signature> {
  const personId = idOf(ids.person, person);
  const member = await tx.people.member(personId);
  return signatureOf(tx, {
    operatorCode: operator.code,
    personId,
    role: member?.roles[0] ?? 'technician',
    aircraftType: aircraft.type,
    privilege,
    statement,
    now,
    proof: { method: 'password', evidence: 'demo data' },
  });
}
