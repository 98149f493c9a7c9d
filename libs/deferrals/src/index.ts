/** The life of a defect: acts, refusals, one decision for each act, replay, standing, and what keeps the aircraft down. */
export * from './acts.js';
export * from './basis.js';
export * from './people.js';
export {
  DEFAULT_SETTINGS,
  type BasisContext,
  type Command,
  type Context,
  type DeferralSettings,
  type LeftElsewhere,
  type RowOffered,
} from './context.js';
export type { Closing, DefectLife, ProcedureDone, Deferral, OpenWork } from './defect-life.js';
export { deadlineOf, type Deadline, type SignedLimit } from './signed-limit.js';

export { reason, Refusal, type FactValue, type Reason } from './refusal.js';
export { REFUSALS, type RefusalCode, type RefusalFacts } from './refusals.js';
export type { RefusalEntry } from './refusals/entry.js';

export { lifeAsKnownAt, proceed, replay } from './replay.js';
export { needZoneData, underZoneData, zoneDifferences, type ZoneDifference } from './zone-data.js';
export { standing, stateOf, type Standing, type State } from './standing.js';
export { grantFor, type GrantAnswer, type GrantTerms } from './flying/grant-for.js';
export { mayDispatch, type DispatchAnswer, type FlightPlanned, type UseBefore } from './flying/may-dispatch.js';
export { aircraftGates, type Gates, type RegisterEntry, type WorkOrder } from './flying/aircraft-gates.js';
export { workOwed } from './flying/work-owed.js';
export {
  proceduresBrought,
  proceduresOf,
  proceduresOwed,
  rowsBroughtBy,
  type ProcedureOwed,
} from './deferring/procedures-owed.js';
export { placardsFitted } from './leaving/fit-placard.js';
export { admitSignature } from './signing/admit-signature.js';

export { writeUp, type WriteUp } from './writing-up/write-up.js';
export { onItsFlight, type OnItsFlight } from './writing-up/on-its-flight.js';
export { identify, itemInWords, type Identify } from './writing-up/identify.js';
export { reEnter, type ReEnter } from './writing-up/re-enter.js';
export { handOver, type HandOver } from './writing-up/hand-over.js';
export { findNoFault, type FindNoFault } from './answering/find-no-fault.js';
export { raiseInError, type RaiseInError } from './answering/raise-in-error.js';
export { resetAndWatch, type ResetAndWatchCommand } from './answering/reset-and-watch.js';
export type { BasisAsked } from './deferring/choose-basis.js';
export { defer, type Defer } from './deferring/defer.js';
export { signLimits } from './deferring/sign-limits.js';
export { changeRow, type ChangeRow } from './deferring/change-row.js';
export { signProcedure, type SignProcedure } from './deferring/sign-procedure.js';
export { obligationsOf } from './repeating/obligations.js';
export type { Departure, Obligation } from './repeating/obligation.js';
export { transfer, type Transfer } from './deferring/transfer.js';
export { extendInterval, type Extend } from './extending/extend.js';
export { offerExtension, type ExtensionOffer } from './extending/extension-offer.js';
export { admitAsking, type ExtensionAsking } from './extending/admit-request.js';
export type { GrantAsked } from './extending/extend-limits.js';
export { enterGrant, type EnterGrant } from './extending/enter-grant.js';
export { moveThings, type Holder, type Moved, type MoveThings } from './leaving/move-things.js';
export { ownerInWords } from './leaving/owner-in-words.js';
export { thingsLeftBy } from './leaving/things-left-by.js';
export { thingInWords } from './leaving/left-items.js';
export type * from './register/acts.js';
export {
  EMPTY_REGISTER,
  type RegisteredThing,
  type RegisterLife,
  type UnseenRemoval,
} from './register/register-life.js';
export { replayRegister } from './register/replay-register.js';
export { fitUnderDocument, type FitUnderDocument } from './register/fit-under-document.js';
export { findOnAircraft, type FindOnAircraft } from './register/find-on-aircraft.js';
export { removeFromAircraft, seeRemoval, type OnItems } from './register/remove-from-aircraft.js';
export { endDocument, type EndDocument } from './register/change-owner.js';
export { leaveThingAsWritten, type LeaveThing } from './register/thing-stays.js';
export { askThingCorrection, correctThing, type AskThingCorrection } from './register/correct-thing.js';
export { giveShift, takeShift, type GiveShift, type ShiftList, type TakeShift } from './register/hand-over-shift.js';
export {
  acceptFlight,
  voidBecause,
  type Acceptance,
  type AcceptingRole,
  type ItemShown,
  type Shown,
} from './accepting/accept-flight.js';
export { basisShown } from './accepting/basis-shown.js';
export {
  recognise,
  type Before,
  type Recognised,
  type RepetitiveRule,
  type WrittenLike,
} from './repetitive/recognise.js';
export { join, type Join } from './answering/join.js';
export { openDeferralOf } from './deferring/not-down-already.js';
export { fitPlacard, type FitPlacard } from './leaving/fit-placard.js';
export { removePlacard, type RemovePlacard } from './leaving/remove-placard.js';
export { leaveOnAircraft, type LeaveOnAircraft } from './leaving/leave.js';
export { undoLeft, type UndoLeft } from './leaving/undo.js';
export { rectify, type Rectify } from './rectifying/rectify.js';
export { recordTest, type RecordTest } from './rectifying/record-test.js';
export { inspect, type Inspect } from './rectifying/inspect.js';
export { verifyGenerally, type VerifyGenerally } from './rectifying/verify-generally.js';
export { listAsksInspection } from './rectifying/inspection-asked.js';
export { restore, type Restore } from './rectifying/restore.js';
export { release, type Release } from './rectifying/release.js';
export { remindersDue, type RemindersDue } from './watching/reminders-due.js';
export { shareLeft } from './watching/share-left.js';
export { startCard, type StartCard } from './cards/start-card.js';
export { doStep, type DoStep, type StepAsked } from './cards/do-step.js';
export { inspectStep, type InspectStep } from './cards/inspect-step.js';
export { signCard, type SignCard } from './cards/sign-card.js';
export { stopCard, type StopCard } from './cards/stop-card.js';
export { actsOn, doneBy, stepInFull, stepInWords, stepsMissingBefore } from './cards/card-work.js';
export type { CardWork } from './cards/card-life.js';
export { lastingOf, type Lasting } from './cards/lasting.js';
export { limitsInWords } from './cards/measured.js';
export { confirms, newerRevision } from './cards/newer-revision.js';
export { type EquipmentStated } from './cards/equipment.js';
export { dayIn } from './repeating/good-for.js';
export { secondNeeded } from './cards/second-person.js';
export { signaturesOf } from './signing/signatures-of.js';
export { stoppedHalfWorked, stoppedInWords } from './cards/stopped-half-worked.js';
export { performersOf } from './rectifying/performers.js';
export { accountsOf, missingOf, type AccountStands } from './cards/what-is-missing.js';
export { askCorrection, lookAndCorrect, type AskCorrection, type GivenFor } from './correcting/ask-correction.js';
export { askingsEndedBy } from './correcting/asked-after.js';
export { privilegeToLeaveIt, stayAsWritten, waitingBy, type StayAsWritten } from './correcting/stay-as-written.js';
export type { UnitOffered } from './correcting/admit-unit.js';
export {
  admitDoneEarlier,
  needsSecondLook,
  privilegeOfCorrection,
  readsOtherwise,
} from './correcting/admit-correction.js';
export { admitNoneLeftBetween } from './correcting/admit-none-left-between.js';
export { unitsWith } from './correcting/unit-now.js';
export { actsAsCorrected, asCorrected } from './correcting/as-corrected.js';
export { detailsOf } from './correcting/details.js';
export { FIELD_WORDS, isWordOfWriteUp, WORDS_OF_WRITE_UP } from './correcting/field-words.js';
export {
  NEVER_CORRECTED,
  notByCorrection,
  putRightOtherwise,
  type NeverCorrected,
} from './correcting/put-right-otherwise.js';
export { readsNow } from './correcting/reads-now.js';
export { correctionMoves, type LimitMoved } from './correcting/correction-moves.js';
export { correct, type Correct } from './correcting/correct.js';
