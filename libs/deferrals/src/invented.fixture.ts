/** Valid things to build tests from: an invented operator, its people, one aircraft, one item. A test states what matters. */
import type { BroughtRow, Entry, Row, SubEntry } from '#mel';
import type { Aircraft } from './acts.js';
import { DEFAULT_SETTINGS, type BasisContext, type DeferralSettings, type RowOffered } from './context.js';
import type { DefectLife } from './defect-life.js';
import { defer, type Defer } from './deferring/defer.js';
import type { Actor, Authorisation, Privilege, Signature } from './people.js';
import { Refusal } from './refusal.js';
import type { RefusalCode } from './refusals.js';
import { verifyGenerally } from './rectifying/verify-generally.js';
import { proceed, replay } from './replay.js';
import { identify } from './writing-up/identify.js';
import { writeUp, type WriteUp } from './writing-up/write-up.js';

export const AIRCRAFT: Aircraft = { registration: 'Q-ABA', type: 'INV-1', operator: 'Invented Air' };
export const ORGANISATION = { name: 'Invented Line Maintenance', approval: 'XX.145.0001' };

const ALL: Privilege[] = [
  'write-up',
  'defer',
  'concur',
  'sign-procedure',
  'inspect',
  'release',
  'extend',
  'judge-combination',
];

export const actor = (person: string, over: Partial<Actor> = {}): Actor => ({
  person,
  name: `Person ${person}`,
  role: 'technician',
  organisation: ORGANISATION,
  ...over,
});

export const authorisation = (person: string, over: Partial<Authorisation> = {}): Authorisation => ({
  number: `AUTH-${person}`,
  operator: AIRCRAFT.operator,
  person,
  organisation: ORGANISATION,
  aircraftTypes: [AIRCRAFT.type],
  licenceCategories: ['B1'],
  privileges: ALL,
  validFrom: '2020-01-01T00:00Z',
  validUntil: null,
  revokedAt: null,
  ...over,
});

/** The signature of a person at an instant, on an authorisation that covers everything unless the test says otherwise. */
export const signed = (
  person: string,
  signedAt: string,
  { scope, ...over }: Partial<Signature> & { scope?: Partial<Authorisation> } = {},
): Signature => ({
  ...actor(person),
  licence: `LIC-${person}`,
  authorisation: authorisation(person, scope),
  statement: 'What is stated here was done in accordance with the approved data.',
  signedAt,
  method: 'password',
  evidence: `session-${person}`,
  ...over,
});

export const row = (over: Partial<Row> = {}): Row => ({
  id: '1',
  category: 'C',
  numberInstalled: 2,
  numberRequired: 1,
  remarks: 'One may be inoperative.',
  ...over,
});

export const offer = (own: Partial<Row> = {}): RowOffered => {
  const offered = row(own);
  const subEntry: SubEntry = { id: 'all', units: ['1', '2'], rows: [offered] };
  const entry: Entry = { number: '22-10-01', title: 'Autopilot', chapter: '22', subEntries: [subEntry] };
  return { document: 'Invented MEL', revision: '3', entry, subEntry, row: offered };
};

export const settings = (over: Partial<DeferralSettings> = {}): DeferralSettings => ({
  ...DEFAULT_SETTINGS,
  base: 'UTC',
  tzdb: '2026a',
  extensionProcedure: 'OM-A 8.6.1',
  ...over,
});

type ContextAsked = Partial<Omit<BasisContext, 'settings'>> & { settings?: Partial<DeferralSettings> };

export const context = (now: string, { settings: own, ...over }: ContextAsked = {}): BasisContext => ({
  now,
  settings: settings(own),
  offered: offer(),
  others: [],
  used: {},
  elsewhere: [],
  ...over,
});

/** A write-up of unit 1, found by the crew and entered at once. */
export const writtenUp = (recordedAt: string, over: Partial<WriteUp> = {}): DefectLife => {
  const command: WriteUp = {
    id: `${over.defect ?? 'D1'}-written-up`,
    defect: 'D1',
    by: actor('crew', { role: 'commander' }),
    aircraft: AIRCRAFT,
    origin: 'crew',
    description: 'Autopilot 1 disconnects by itself.',
    recordedAt,
    ...over,
  };
  return replay(writeUp(null, command, context(recordedAt)));
};

export const identifiedAs = (life: DefectLife, units: string[] = ['1'], entry = '22-10-01'): DefectLife => {
  const item = { entry, subEntry: 'all', units };
  const command = { id: `${life.defect}-identified`, by: actor('tech'), item, installed: ['1', '2'] };
  return proceed(life, identify(life, command, context(life.acts.at(-1)?.enteredAt ?? life.enteredAt)));
};

/** Unit 1, deferred by its row at `at` (default: as soon as recorded). */
export const deferredAs = (
  own: Partial<Row>,
  recordedAt: string,
  {
    at = recordedAt,
    settings: set,
    brings = [],
    ...command
  }: Partial<Defer> & { at?: string; settings?: Partial<DeferralSettings>; brings?: BroughtRow[] } = {},
): DefectLife => {
  const life = identifiedAs(writtenUp(recordedAt));
  const offered = { ...offer(own), brings };
  const asked: Defer = {
    id: 'deferred',
    by: signed('tech', at),
    basis: { kind: 'mel-row', row: offered.row.id },
    ...command,
  };
  return proceed(life, defer(life, asked, context(at, { offered, ...(set === undefined ? {} : { settings: set }) })));
};

/** Work that is open, gone over for tools, panels and the register. */
export const goneOver = (life: DefectLife, by: Signature, at: string): DefectLife => {
  const said = { toolsAccounted: true, panelsClosed: true, registerChecked: true };
  const id = `verified-${life.acts.length}`;
  return proceed(life, verifyGenerally(life, { id, by, ...said }, context(at)));
};

/** The refusal that this runs into. Anything else is an error, so that no test mistakes a success for a refusal. */
export const refusalOf = (act: () => unknown, code?: RefusalCode): Refusal => {
  try {
    act();
  } catch (error) {
    if (error instanceof Refusal && (code === undefined || error.code === code)) return error;
    throw error;
  }
  throw new Error(`Nothing was refused${code === undefined ? '' : `; ${code} was expected`}.`);
};
