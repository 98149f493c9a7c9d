/**
 * A procedure of the basis in force is done and signed, with everything that it leaves altered named by place and tag.
 * ORO.MLR.105; 14 CFR 121.628; 145.A.48.
 */
import type { LeftItem, ProcedureSigned } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { basisInWords } from '../basis.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { admitLateWork } from '../repeating/admit-late-work.js';
import { admitRemoval } from '../leaving/admit-removal.js';
import { admitLeft, leave } from '../leaving/left-items.js';
import { notFittedElsewhere } from '../leaving/not-fitted-elsewhere.js';
import { Refusal } from '../refusal.js';
import { before } from '../instant.js';
import { procedureFor, proceduresOf } from './procedures-owed.js';

export const procedureSigned: ActRule<'procedure-signed'> = {
  kind: 'procedure-signed',
  privilege: 'sign-procedure',
  admit(life, act) {
    const { defect, deferral, left } = life;
    if (deferral === null) throw new Refusal('not-deferred', { defect });
    const { work, leaves, doneAt, enteredAt } = act;
    const procedure = procedureFor(deferral.basis, work);
    if (procedure === undefined) {
      const procedures = proceduresOf(deferral.basis).map((owed) => owed.work);
      throw new Refusal('procedure-not-of-this-row', { work, basis: basisInWords(deferral.basis), procedures });
    }
    if (procedure.card !== undefined) throw new Refusal('procedure-has-card', { work, card: procedure.card });
    if (before(enteredAt, doneAt)) throw new Refusal('recorded-in-the-future', { recordedAt: doneAt, enteredAt });
    admitLeft(life, leaves);
    admitRemoval(defect, deferral.basis, leaves);
    const named = [...left, ...leaves];
    const missing = (procedure.leaves ?? []).filter(
      ({ kind, where }) => !named.some((item) => item.kind === kind && isAt(item.where, where)),
    );
    if (missing.length > 0) {
      const things = missing.map(({ kind, where }) => `${kind} at ${where}`);
      throw new Refusal('procedure-leaves-more', { work, missing: things });
    }
  },
  changes: (life, act) => ({ procedures: [...life.procedures, act], ...leave(life, act.leaves) }),
};

export interface SignProcedure extends Command {
  work: string;
  /** Absent: now. */
  doneAt?: string;
  validUntil?: string;
  forFlight?: string;
  leaves?: LeftItem[];
  /** When the aircraft first left the blocks between the work and its entry here; absent or null: it did not. */
  leftMeanwhileAt?: string | null;
}

export function signProcedure(life: DefectLife, command: SignProcedure, context: Context): ProcedureSigned[] {
  const { work, doneAt, validUntil, forFlight, leaves } = command;
  admitLateWork(command);
  notFittedElsewhere(leaves ?? [], context);
  return decided(procedureSigned, life, {
    kind: 'procedure-signed',
    ...headOf(command, context),
    defect: life.defect,
    work,
    doneAt: doneAt ?? context.now,
    validUntil: validUntil ?? null,
    forFlight: forFlight ?? null,
    leaves: leaves ?? [],
  });
}

/** The place as the procedure names it, or that with more said: "panel P6, C14 or C15" and "panel P6, C14 or C15, C14". */
function isAt(where: string, named: string): boolean {
  return where === named || where.startsWith(`${named}, `);
}
