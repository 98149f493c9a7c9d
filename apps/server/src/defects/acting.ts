/** One act on one defect: locked, read, decided by the rules, written with its record, answered. */
import type { FastifyReply, FastifyRequest } from 'fastify';
import {
  type Act,
  type Actor,
  type Context,
  type DefectLife,
  isSignature,
  type Privilege,
  type Signature,
  signaturesOf,
} from '#deferrals';
import type { Role } from '#mel';
import type { AircraftRow, DefectRow, Tx } from '#store';
import type { SignBody } from '../http/fields.js';
import { seenVersion } from '../http/headers.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import type { Clock } from '../http/tokens.js';
import type { OperatorSettings } from '../people/operator-settings.js';
import type { Proof } from '../people/proof.js';
import { signerOfAct } from '../people/kept-signature.js';
import { signatureOf } from '../people/signer.js';
import { leftElsewhere } from '../register/left-elsewhere.js';
import { livesIn, type OpenedDefect } from './defect-book.js';
import { type SignedAct, type StatementFacts, statementOf } from './statements.js';
import { defectNumber, signerOf } from './views.js';

/** What a request brings along. */
export interface Calling {
  session: Session;
  request: FastifyRequest;
  reply: FastifyReply;
  /** How the signer was proved to be the person of the session; absent where nothing is signed. */
  proof?: Proof | null;
  /** Asks what the decision will ask, together with what the scene is read from: an answer that waits costs no turn. */
  ahead?: (tx: Tx, aircraft: AircraftRow, row: DefectRow) => Promise<unknown>;
}

/** Everything a decision reads. */
export interface Scene {
  tx: Tx;
  session: Session;
  proof: Proof | null;
  aircraft: AircraftRow;
  row: DefectRow;
  life: DefectLife;
  /** The open defects of the aircraft, this one among them. */
  opened: readonly OpenedDefect[];
  /** The others. */
  others: readonly OpenedDefect[];
  settings: OperatorSettings;
  context: Context;
}

/** Locks the aircraft first, then reads: what is decided is decided on what stands at that moment. */
export async function sceneOf(
  tx: Tx,
  { session, request, proof = null, ahead }: Omit<Calling, 'reply'>,
  defectId: string,
  settingsOf: () => Promise<OperatorSettings>,
  clock: Clock,
): Promise<Scene> {
  const seen = seenVersion(request);
  // All of these are sent at once behind the lock, so what they read is what stands once it is held.
  const [aircraft, rows, stored, settings] = await Promise.all([
    tx.aircraft.lockOfDefect(defectId),
    tx.defects.openBeside(defectId),
    tx.acts.ofOpenBeside(defectId),
    settingsOf(),
    tx.people.member(session.personId),
    tx.zoneData.all(),
    ...(proof === null ? [] : [tx.people.authorisationsOf(session.personId)]),
  ]);
  const row = rows.find(({ id }) => id === defectId) ?? (await tx.defects.get(defectId));
  if (!row || !aircraft) throw new Problem('not-found', `There is no defect ${defectId} here.`);
  if (row.version !== seen) {
    throw new Problem(
      'changed-meanwhile',
      `Defect ${defectNumber(aircraft, row)} is at version ${row.version}, not ${seen}.`,
      {
        current: row.version,
      },
    );
  }
  const [opened] = await Promise.all([
    livesIn(tx, rows.some(({ id }) => id === row.id) ? rows : [...rows, row], stored),
    tx.register.ofAircraft(aircraft.id),
    tx.mel.inForce(aircraft.type),
    ahead?.(tx, aircraft, row),
  ]);
  const own = opened.find(({ row: one }) => one.id === row.id);
  if (!own) throw new Error(`Defect ${row.id} has no life.`);
  const others = opened.filter((one) => one !== own);
  return {
    tx,
    session,
    proof,
    aircraft,
    row,
    life: own.life,
    opened,
    others,
    settings,
    context: {
      now: nowAfter(own.life, clock()),
      settings: settings.deferral,
      elsewhere: await leftElsewhere(
        tx,
        aircraft,
        others.map(({ life }) => life),
      ),
    },
  };
}

/** Read once the aircraft is ours. Where the clocks of two servers differ, no act is entered before the one it follows. */
function nowAfter({ acts }: DefectLife, now: string): string {
  const last = acts.at(-1)?.enteredAt ?? now;
  return Date.parse(last) > Date.parse(now) ? last : now;
}

/** Who signs, if not the person of the session alone. */
interface SigningPerson {
  personId: string;
  role: Role | 'cabin';
  proof: Proof;
}

/** The signature under the statement that was shown; refused when another one was shown. */
export async function signed(
  scene: Scene,
  act: SignedAct,
  privilege: Privilege,
  sign: Pick<SignBody, 'statement'>,
  more: Partial<StatementFacts> = {},
): Promise<Signature> {
  const { session, proof } = scene;
  if (proof === null) throw new Error('Nobody was proved to be the signer.');
  const signer = { personId: session.personId, role: session.roles[0] ?? 'technician', proof };
  return signedBy(scene, signer, act, privilege, sign, more);
}

/** The same, by a person who was proved beside the one of the session. */
export async function signedBy(
  { tx, aircraft, row, settings, context, life }: Scene,
  signer: SigningPerson,
  act: SignedAct,
  privilege: Privilege | null,
  sign: Pick<SignBody, 'statement'>,
  more: Partial<StatementFacts>,
): Promise<Signature> {
  const facts = {
    registration: aircraft.registration,
    number: defectNumber(aircraft, row),
    releaseName: settings.releaseName,
    ...more,
  };
  const statement = statementOf(act, facts, settings.releaseWording);
  if (sign.statement !== statement) {
    throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
  }
  const operator = await tx.operators.current();
  return signatureOf(tx, {
    ...signer,
    operatorCode: operator.code,
    aircraftType: aircraft.type,
    privilege,
    job: { defect: life.defect, usedNumbers: numbersUsed(life) },
    statement,
    now: context.now,
  });
}

/** Authorisations that a signature was given on: a one-off among them is used up. */
export function numbersUsed({ acts }: DefectLife): string[] {
  return acts.flatMap((act) => signaturesOf(act).map(({ authorisation }) => authorisation.number));
}

/** The confirmation that a signer gets. */
export function confirmation(acts: readonly Act[]): object | null {
  const last = acts.at(-1);
  const by = last && signerOfAct<Actor | Signature>(last);
  if (!by || !isSignature(by)) return null;
  return { statement: by.statement, ...signerOf(by) };
}
