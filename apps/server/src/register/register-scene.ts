/** Everything that a decision on the register of an aircraft reads, with the aircraft held. */
import type { Aircraft, Context, Privilege, RegisterLife, Signature } from '#deferrals';
import { type AircraftRow, lockAircraft, type Tx } from '#store';
import { livesOf, type OpenedDefect } from '../defects/defect-book.js';
import type { SignBody } from '../http/fields.js';
import { seenVersion } from '../http/headers.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import type { Called } from '../http/called.js';
import type { OperatorSettings } from '../people/operator-settings.js';
import type { Proof } from '../people/proof.js';
import { signatureOf } from '../people/signer.js';
import { leftElsewhere } from './left-elsewhere.js';
import { registerLifeOf } from './register-book.js';
import { statementOnRegister } from './statement-on-register.js';
import type { RegisterSigned } from './statements.js';

export interface RegisterScene {
  tx: Tx;
  session: Session;
  proof: Proof | null;
  row: AircraftRow;
  aircraft: Aircraft;
  life: RegisterLife;
  opened: readonly OpenedDefect[];
  settings: OperatorSettings;
  context: Context;
}

export async function registerSceneOf(
  tx: Tx,
  { id, session, request }: Called,
  proof: Proof | null,
  settings: OperatorSettings,
  now: string,
): Promise<RegisterScene> {
  const row = await lockAircraft(tx, id);
  if (!row) throw new Problem('not-found', `There is no aircraft ${id} here.`);
  const seen = seenVersion(request);
  if (row.version !== seen) {
    const words = `${row.registration} is at version ${row.version}, not ${seen}.`;
    throw new Problem('changed-meanwhile', words, { current: row.version });
  }
  const life = await registerLifeOf(tx, row);
  const opened = await livesOf(tx, await tx.defects.open(id));
  const operator = await tx.operators.current();
  const lives = opened.map((one) => one.life);
  const elsewhere = await leftElsewhere(tx, row, lives);
  return {
    tx,
    session,
    proof,
    row,
    aircraft: { registration: row.registration, type: row.type, operator: operator.code },
    life,
    opened,
    settings,
    context: { now: notBefore(life, now), settings: settings.deferral, elsewhere },
  };
}

/** Where the clocks of two servers differ, no act is entered before the one it follows. */
function notBefore({ acts }: RegisterLife, now: string): string {
  const last = acts.at(-1)?.enteredAt ?? now;
  return Date.parse(last) > Date.parse(now) ? last : now;
}

/** The signature under the statement that was shown; refused when another one was shown. */
export async function signedOnRegister(
  scene: RegisterScene,
  { act, privilege, sign, asked }: { act: RegisterSigned; privilege: Privilege; sign: SignBody; asked?: string },
): Promise<Signature> {
  const { tx, session, proof, row, aircraft, context } = scene;
  if (proof === null) throw new Error('Nobody was proved to be the signer.');
  const statement = await statementOnRegister(scene, act, asked);
  if (sign.statement !== statement) {
    throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
  }
  return signatureOf(tx, {
    operatorCode: aircraft.operator,
    personId: session.personId,
    role: session.roles[0] ?? 'technician',
    aircraftType: row.type,
    privilege,
    statement,
    now: context.now,
    proof,
  });
}
