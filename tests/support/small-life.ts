/** The life of one deferred defect of an invented aircraft, built by the public acts alone. */
import {
  type BasisContext,
  DEFAULT_SETTINGS,
  defer,
  identify,
  proceed,
  replay,
  type DefectLife,
  type RowOffered,
  type Signature,
  writeUp,
} from '#deferrals';
import type { Mel } from '#mel';

const organisation = { name: 'Invented Line Maintenance', approval: 'XX.145.0001' };

/** Somebody who may sign everything. */
export const signedBy = (person: string, signedAt: string): Signature => ({
  person,
  name: `Person ${person}`,
  role: 'technician',
  organisation,
  licence: `LIC-${person}`,
  authorisation: {
    number: `AUTH-${person}`,
    operator: 'Invented Air',
    person,
    organisation,
    aircraftTypes: ['X'],
    licenceCategories: ['B1'],
    privileges: ['write-up', 'defer', 'sign-procedure', 'release'],
    validFrom: '2020-01-01T00:00Z',
    validUntil: null,
    revokedAt: null,
  },
  statement: 'Done as stated.',
  signedAt,
  method: 'password',
  evidence: 'a test',
});

/** Settings at an instant, with no row looked up. */
export const contextAt = (now: string, offered: RowOffered | null = null): BasisContext => ({
  now,
  settings: { ...DEFAULT_SETTINGS, base: 'UTC', tzdb: '2026a' },
  offered,
  others: [],
  elsewhere: [],
  used: {},
});

/** Unit 1 of the entry, written up and deferred by row 1 at the same instant. */
export function deferredLife(mel: Mel, number: string, at: string): DefectLife {
  const by = signedBy('tech', at);
  const aircraft = { registration: 'Q-ABC', type: 'X', operator: 'Invented Air' };
  const told = { id: 'w', defect: 'D1', by, aircraft, origin: 'technician' as const, description: 'It is dead.' };
  const written = replay(writeUp(null, told, contextAt(at)));
  const entry = mel.entry(number);
  const found = mel.row(number, '1', { type: 'X', configuration: [], serial: 1 });
  if (!entry || !found) throw new Error(`There is no row 1 of ${number}.`);
  const item = { entry: number, subEntry: found.subEntry.id, units: ['1'] };
  const known = proceed(
    written,
    identify(written, { id: 'i', by, item, installed: found.subEntry.units }, contextAt(at)),
  );
  const offered = { document: 'Invented MEL', revision: '1', entry, ...found };
  return proceed(known, defer(known, { id: 'd', by, basis: { kind: 'mel-row', row: '1' } }, contextAt(at, offered)));
}
