/**
 * The life of a defect, rebuilt from its acts and from nothing else.
 *
 * Each act is checked by the same rule that admitted it. A history that cannot have happened is refused, so a stored
 * list that was altered, cut in the middle or put in another order does not pass for a life.
 */
import type { Act, ActKind, ActOf } from './acts.js';
import { follow, type ActRule } from './act-rule.js';
import { noFaultFound } from './answering/find-no-fault.js';
import { joined } from './answering/join.js';
import { raisedInError } from './answering/raise-in-error.js';
import { resetAndWatched } from './answering/reset-and-watch.js';
import { cardStepped } from './cards/do-step.js';
import { cardInspected } from './cards/inspect-step.js';
import { cardSigned } from './cards/sign-card.js';
import { cardStarted } from './cards/start-card.js';
import { cardStopped } from './cards/stop-card.js';
import { correctionAsked } from './correcting/ask-correction.js';
import { corrected } from './correcting/correct.js';
import { staysAsWritten } from './correcting/stay-as-written.js';
import type { DefectLife } from './defect-life.js';
import { rowChanged } from './deferring/change-row.js';
import { deferred } from './deferring/defer.js';
import { procedureSigned } from './deferring/sign-procedure.js';
import { transferred } from './deferring/transfer.js';
import { authorityGranted } from './extending/enter-grant.js';
import { extended } from './extending/extend.js';
import { before } from './instant.js';
import { placardFitted } from './leaving/fit-placard.js';
import { givenOver } from './leaving/give-over.js';
import { leftOnTheAircraft } from './leaving/leave.js';
import { placardRemoved } from './leaving/remove-placard.js';
import { takenOver } from './leaving/take-over.js';
import { undone } from './leaving/undo.js';
import { inspected } from './rectifying/inspect.js';
import { tested } from './rectifying/record-test.js';
import { rectification } from './rectifying/rectify.js';
import { released } from './rectifying/release.js';
import { restored } from './rectifying/restore.js';
import { generallyVerified } from './rectifying/verify-generally.js';
import { Refusal } from './refusal.js';
import { handedOver } from './writing-up/hand-over.js';
import { identified } from './writing-up/identify.js';
import { reEntered } from './writing-up/re-enter.js';
import { begin, writtenAlready } from './writing-up/write-up.js';

type LaterKind = Exclude<ActKind, 'written-up'>;

const RULES: { [Kind in LaterKind]: ActRule<Kind> } = {
  identified,
  deferred,
  'procedure-signed': procedureSigned,
  'placard-fitted': placardFitted,
  'placard-removed': placardRemoved,
  'left-on-the-aircraft': leftOnTheAircraft,
  undone,
  'row-changed': rowChanged,
  extended,
  'authority-granted': authorityGranted,
  transferred,
  're-entered': reEntered,
  'handed-over': handedOver,
  rectification,
  tested,
  inspected,
  restored,
  released,
  'no-fault-found': noFaultFound,
  'raised-in-error': raisedInError,
  'reset-and-watch': resetAndWatched,
  corrected,
  'card-started': cardStarted,
  'card-stepped': cardStepped,
  'card-inspected': cardInspected,
  'card-signed': cardSigned,
  'card-stopped': cardStopped,
  'correction-asked': correctionAsked,
  'stays-as-written': staysAsWritten,
  'taken-over': takenOver,
  'given-over': givenOver,
  'generally-verified': generallyVerified,
  joined,
};

/** The life that these acts make, in the order in which they were entered. Throws Refusal for an impossible history. */
export function replay(acts: readonly Act[]): DefectLife {
  const [first, ...later] = acts;
  if (first === undefined || first.kind !== 'written-up') {
    throw new Refusal('not-written-up', { defect: first?.defect ?? 'without acts' });
  }
  return proceed(begin(first), later);
}

/** The life after more acts. Throws Refusal for an impossible history. */
export function proceed(life: DefectLife, acts: readonly Act[]): DefectLife {
  return acts.reduce(next, life);
}

/** The life as it was known at an instant: only the acts entered by then. Throws Refusal when there were none. */
export function lifeAsKnownAt(acts: readonly Act[], at: string): DefectLife {
  return replay(acts.filter(({ enteredAt }) => !before(at, enteredAt)));
}

function next(life: DefectLife, act: Act): DefectLife {
  if (act.kind === 'written-up') throw writtenAlready(life);
  return followByKind(life, act.kind, act);
}

function followByKind<Kind extends LaterKind>(life: DefectLife, kind: Kind, act: ActOf<Kind>): DefectLife {
  const rule: ActRule<Kind> | undefined = Object.hasOwn(RULES, kind) ? RULES[kind] : undefined;
  if (rule === undefined) throw new Error(`No rule is known for acts of kind ${String(kind)}`);
  return follow(rule, life, act);
}
