import { Guards1795590000000 } from './1795590000000-guards.js';
import { OperatorsAndPeople1795590100000 } from './1795590100000-operators-and-people.js';
import { SignIn1795590200000 } from './1795590200000-sign-in.js';
import { Fleet1795590300000 } from './1795590300000-fleet.js';
import { Mel1795590400000 } from './1795590400000-mel.js';
import { Record1795590500000 } from './1795590500000-record.js';
import { Defects1795590600000 } from './1795590600000-defects.js';
import { SignaturesAndAnswers1795590700000 } from './1795590700000-signatures-and-answers.js';
import { Idempotency1795590800000 } from './1795590800000-idempotency.js';
import { Movements1795590900000 } from './1795590900000-movements.js';
import { Extensions1795591000000 } from './1795591000000-extensions.js';
import { CalendarFeeds1795591100000 } from './1795591100000-calendar-feeds.js';
import { PeopleAtStations1795592000000 } from './1795592000000-people-at-stations.js';
import { ZoneData1795593000000 } from './1795593000000-zone-data.js';
import { Reminders1795594000000 } from './1795594000000-reminders.js';
import { FeedsOfAPerson1795594100000 } from './1795594100000-feeds-of-a-person.js';
import { MovementFiles1795594200000 } from './1795594200000-movement-files.js';
import { WorkCards1795595000000 } from './1795595000000-work-cards.js';
import { RegisterOfAircraft1795596000000 } from './1795596000000-register-of-aircraft.js';
import { AttemptsCountedFirst1795597000000 } from './1795597000000-attempts-counted-first.js';
import { FormsOfSignature1795597100000 } from './1795597100000-forms-of-signature.js';
import { OtherMeansOfProof1795597200000 } from './1795597200000-other-means-of-proof.js';
import { OneOffAuthorisations1795597300000 } from './1795597300000-one-off-authorisations.js';
import { SignedHeads1795598000000 } from './1795598000000-signed-heads.js';
import { BackupsRecorded1795598100000 } from './1795598100000-backups-recorded.js';
import { ErasureOfAPerson1795598500000 } from './1795598500000-erasure-of-a-person.js';
import { CountsOfEngines1795602000000 } from './1795602000000-counts-of-engines.js';
import { ConfirmedMailboxes1795603000000 } from './1795603000000-confirmed-mailboxes.js';
import { ErasedPeople1795605000000 } from './1795605000000-erased-people.js';
import { FailedAttemptsTold1795605010000 } from './1795605010000-failed-attempts-told.js';
import { Concurrences1795606000000 } from './1795606000000-concurrences.js';
import { Accounts1795606100000 } from './1795606100000-accounts.js';
import { ListOfErasures1795610000000 } from './1795610000000-list-of-erasures.js';
import { Keeping1795610100000 } from './1795610100000-keeping.js';
import { EquipmentUsed1795630000000 } from './1795630000000-equipment-used.js';
import { AircraftComeAndGo1795660000000 } from './1795660000000-aircraft-come-and-go.js';
import { Invitations1795660010000 } from './1795660010000-invitations.js';
import { ConcurredTo1795670000000 } from './1795670000000-concurred-to.js';
import { BindingsOfOthers1795672000000 } from './1795672000000-bindings-of-others.js';
import { LinesCorrected1795681100000 } from './1795681100000-lines-corrected.js';

/** In the order they run. A migration is never edited once merged: a change is a new file at the end of this list. */
export const migrations = [
  Guards1795590000000,
  OperatorsAndPeople1795590100000,
  SignIn1795590200000,
  Fleet1795590300000,
  Mel1795590400000,
  Record1795590500000,
  Defects1795590600000,
  SignaturesAndAnswers1795590700000,
  Idempotency1795590800000,
  Movements1795590900000,
  Extensions1795591000000,
  CalendarFeeds1795591100000,
  PeopleAtStations1795592000000,
  ZoneData1795593000000,
  Reminders1795594000000,
  FeedsOfAPerson1795594100000,
  MovementFiles1795594200000,
  WorkCards1795595000000,
  RegisterOfAircraft1795596000000,
  AttemptsCountedFirst1795597000000,
  FormsOfSignature1795597100000,
  OtherMeansOfProof1795597200000,
  OneOffAuthorisations1795597300000,
  SignedHeads1795598000000,
  BackupsRecorded1795598100000,
  ErasureOfAPerson1795598500000,
  CountsOfEngines1795602000000,
  ConfirmedMailboxes1795603000000,
  ErasedPeople1795605000000,
  FailedAttemptsTold1795605010000,
  Concurrences1795606000000,
  Accounts1795606100000,
  ListOfErasures1795610000000,
  Keeping1795610100000,
  EquipmentUsed1795630000000,
  AircraftComeAndGo1795660000000,
  Invitations1795660010000,
  ConcurredTo1795670000000,
  BindingsOfOthers1795672000000,
  LinesCorrected1795681100000,
];
