import type { EntitySchema } from 'typeorm';
import { AircraftTable } from '../rows/aircraft.row.js';
import { AuthorisationTable } from '../rows/authorisation.row.js';
import { CalendarFeedTable } from '../rows/calendar-feed.row.js';
import { CardConfirmationTable, CardLibraryTable, ManualRevisionTable } from '../rows/card.row.js';
import { ConcurrenceTable } from '../rows/concurrence.row.js';
import { DirectiveTable } from '../rows/directive.row.js';
import { EngineCountTable } from '../rows/engine-count.row.js';
import { ExtensionTable } from '../rows/extension.row.js';
import { FactTable } from '../rows/fact.row.js';
import { FlightTable } from '../rows/flight.row.js';
import { HoldTable } from '../rows/hold.row.js';
import { InvitationTable } from '../rows/invitation.row.js';
import { JudgementTable } from '../rows/judgement.row.js';
import { MelRevisionTable } from '../rows/mel-revision.row.js';
import { MembershipTable } from '../rows/membership.row.js';
import { MovementFileTable } from '../rows/movement-file.row.js';
import { MovementTrayTable } from '../rows/movement.row.js';
import { OperatorTable } from '../rows/operator.row.js';
import { OrganisationTable } from '../rows/organisation.row.js';
import { ReminderAddressTable } from '../rows/reminder-address.row.js';
import { StationCoverTable } from '../rows/station-cover.row.js';
import { StationTable } from '../rows/station.row.js';
import { VerdictTable } from '../rows/verdict.row.js';
import { ZoneDifferenceTable } from '../rows/zone-difference.row.js';

/** A table each of whose rows the record tells as it stood after every change. */
export interface ToldTable {
  table: EntitySchema;
  /** The property that, with the operator, is its key. */
  key: 'id' | 'personId' | 'code' | 'entryId';
  /** Told by another column, such as a hash; or personal, and so not for ever. */
  without: readonly string[];
}

/** The version counts changes and says nothing more; the operator is that of the entry. */
const NEVER = ['operatorId', 'version'];

const told = (table: EntitySchema, without: readonly string[] = [], key: ToldTable['key'] = 'id'): ToldTable => ({
  table,
  key,
  without: [...NEVER, ...without],
});

const NEVER_OF_AN_ADDRESS = [
  'address',
  'label',
  'secret',
  'formerSecret',
  'formerUntil',
  'codeHash',
  'codeSentAt',
  'codeProblem',
  'codeTries',
  'codesAsked',
];

/** What is told of no act by itself: what was entered, settled, planned, answered and loaded. */
export const toldTables: readonly ToldTable[] = [
  told(OperatorTable),
  told(OrganisationTable),
  told(MembershipTable, [], 'personId'),
  told(AuthorisationTable),
  told(InvitationTable, ['codeHash']),
  told(AircraftTable),
  told(StationTable, [], 'code'),
  told(StationCoverTable),
  told(FlightTable),
  told(FactTable),
  told(JudgementTable),
  told(ConcurrenceTable),
  told(VerdictTable),
  told(ExtensionTable),
  // One row for each version, and so the version says something.
  { table: EngineCountTable, key: 'entryId', without: ['operatorId'] },
  told(DirectiveTable),
  told(MelRevisionTable, ['content']),
  told(CardLibraryTable, ['content']),
  told(CardConfirmationTable),
  told(ManualRevisionTable),
  told(ZoneDifferenceTable),
  told(MovementFileTable),
  told(MovementTrayTable),
  told(CalendarFeedTable, ['label']),
  told(HoldTable),
  told(ReminderAddressTable, NEVER_OF_AN_ADDRESS),
];

const byName = new Map(toldTables.map((one) => [one.table.options.name, one]));

export function toldTable(name: string): ToldTable | undefined {
  return byName.get(name);
}
