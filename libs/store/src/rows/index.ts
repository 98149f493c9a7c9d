import { AircraftTable } from './aircraft.row.js';
import { AuthorisationTable } from './authorisation.row.js';
import { CalendarFeedTable } from './calendar-feed.row.js';
import { CardConfirmationTable, CardLibraryTable, ManualRevisionTable } from './card.row.js';
import { ConcurrenceTable } from './concurrence.row.js';
import { CredentialTable } from './credential.row.js';
import { DefectActTable } from './defect-act.row.js';
import { DefectTable } from './defect.row.js';
import { DirectiveTable } from './directive.row.js';
import { EngineCountTable } from './engine-count.row.js';
import { ErasureTable } from './erasure.row.js';
import { ExtensionTable } from './extension.row.js';
import { FactTable } from './fact.row.js';
import { FlightTable } from './flight.row.js';
import { HoldTable, PastKeepingTable } from './hold.row.js';
import { IdempotencyTable } from './idempotency.row.js';
import { InvitationTable } from './invitation.row.js';
import { JudgementTable } from './judgement.row.js';
import { LegTable } from './leg.row.js';
import { LeftItemTable } from './left-item.row.js';
import { MelRevisionTable } from './mel-revision.row.js';
import { MembershipTable } from './membership.row.js';
import { MovementFileTable } from './movement-file.row.js';
import { MovementDeliveryTable, MovementMessageTable, MovementTrayTable } from './movement.row.js';
import { OperatorTable } from './operator.row.js';
import { OrganisationTable } from './organisation.row.js';
import { PasskeyTable } from './passkey.row.js';
import { PersonTable } from './person.row.js';
import { RecordEntryTable, RecordSealedTable, TreeFrontierTable, TreeHeadTable } from './record.row.js';
import { ReminderAddressTable } from './reminder-address.row.js';
import { ReminderTable } from './reminder.row.js';
import { RegisterActTable } from './register-act.row.js';
import { SessionTable } from './session.row.js';
import { SignedHeadTable } from './signed-head.row.js';
import { SignatureTable } from './signature.row.js';
import { StationCoverTable } from './station-cover.row.js';
import { StationTable } from './station.row.js';
import { VerdictTable } from './verdict.row.js';
import { ZoneDifferenceTable } from './zone-difference.row.js';

/** Every table that is read and written through TypeORM. Only the sealer's own waiting list is not among them. */
export const tables = [
  AircraftTable,
  AuthorisationTable,
  CalendarFeedTable,
  CardConfirmationTable,
  CardLibraryTable,
  ConcurrenceTable,
  CredentialTable,
  DefectActTable,
  DefectTable,
  DirectiveTable,
  EngineCountTable,
  ErasureTable,
  ExtensionTable,
  FactTable,
  FlightTable,
  HoldTable,
  IdempotencyTable,
  InvitationTable,
  JudgementTable,
  LeftItemTable,
  LegTable,
  ManualRevisionTable,
  MelRevisionTable,
  MembershipTable,
  MovementDeliveryTable,
  MovementFileTable,
  MovementMessageTable,
  MovementTrayTable,
  OperatorTable,
  OrganisationTable,
  PasskeyTable,
  PastKeepingTable,
  PersonTable,
  RecordEntryTable,
  RecordSealedTable,
  ReminderAddressTable,
  ReminderTable,
  RegisterActTable,
  SessionTable,
  SignatureTable,
  SignedHeadTable,
  StationCoverTable,
  StationTable,
  TreeFrontierTable,
  TreeHeadTable,
  VerdictTable,
  ZoneDifferenceTable,
];
