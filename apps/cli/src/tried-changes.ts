/** A change that is tried on a case, in the shape that the interface takes. The case file itself stays as it is. */
import type { Situation } from '#dispatch';
import { UsageError } from './usage-error.js';

interface Changes {
  fix: readonly string[];
  broken: readonly { entry: string; units: string[]; row?: string }[];
  facts: readonly { key: string; value: unknown }[];
  at?: unknown;
  aircraft?: unknown;
}

type Plain = Record<string, unknown>;

const PARTS = ['fix', 'broken', 'facts', 'at', 'aircraft'];
const idOf = (index: number): string => `tried-${index + 1}`;

/**
 * The case with the changes made. What is no case is handed on as it is: whoever reads it says why.
 * Throws UsageError naming file and place of what the changes cannot be.
 */
export function tried(given: unknown, file: string, changes: Changes): unknown {
  if (!isPlain(given)) return given;
  const { fix, broken, facts, at = given['at'], aircraft = given['aircraft'] } = changes;
  const open = plainsOf(given['defects']);
  const strange = fix.find((id) => !open.some((one) => one['id'] === id));
  if (strange !== undefined) throw wrong(file, '/fix', `there is no defect "${strange}" in the case`);
  const supposed = Object.fromEntries(facts.map(({ key, value }) => [key, { value, source: 'tried' }]));
  const known = (flight: unknown): unknown =>
    isPlain(flight) && isPlain(flight['facts']) ? { ...flight, facts: without(flight['facts'], supposed) } : flight;
  const { flights } = given;
  const isFixed = ({ id, defect = id }: Plain): boolean => fix.includes(String(defect));
  return {
    ...given,
    at,
    aircraft,
    facts: { ...(isPlain(given['facts']) ? given['facts'] : {}), ...supposed },
    ...('flight' in given ? { flight: known(given['flight']) } : {}),
    ...('flights' in given ? { flights: Array.isArray(flights) ? flights.map(known) : flights } : {}),
    ...(Array.isArray(given['work']) ? { work: given['work'].filter((one) => !isPlain(one) || !isFixed(one)) } : {}),
    defects: [
      ...open.filter((one) => !isFixed({ id: one['id'] })),
      ...broken.map((one, index) => ({ row: null, ...one, id: idOf(index), signed: false, recordedAt: at })),
    ],
  };
}

/** A row that is asked about is tried alone. */
export function rowsAsked(situation: Situation, { broken }: Changes): Situation {
  const asked = broken.flatMap(({ row }, index) => (row === undefined ? [] : [idOf(index)]));
  const defects = situation.defects.map((one) => (asked.includes(one.id) ? { ...one, rowAsked: true } : one));
  return { ...situation, defects };
}

/** Throws UsageError naming file and place. */
export function changesIn(value: unknown, file: string): Changes {
  if (!isPlain(value)) throw wrong(file, '', `a change is made of ${PARTS.join(', ')}`);
  const strange = Object.keys(value).find((part) => !PARTS.includes(part));
  if (strange !== undefined)
    throw wrong(file, `/${strange}`, `is no part of a change; there are: ${PARTS.join(', ')}`);
  const { fix = [], broken = [], facts = [], ...rest } = value;
  if (!isTexts(fix)) throw wrong(file, '/fix', 'must be a list of ids of defects');
  if (!Array.isArray(broken)) throw wrong(file, '/broken', 'must be a list');
  if (!Array.isArray(facts)) throw wrong(file, '/facts', 'must be a list');
  return {
    ...rest,
    fix,
    broken: broken.map((one: unknown, index) => {
      const units = isPlain(one) ? one['units'] : undefined;
      const row = isPlain(one) ? one['row'] : undefined;
      const place = `/broken/${index}`;
      if (!isPlain(one) || typeof one['entry'] !== 'string')
        throw wrong(file, `${place}/entry`, 'must be an MEL entry');
      if (!isTexts(units) || units.length === 0) throw wrong(file, `${place}/units`, 'must be a list of units');
      if (row !== undefined && typeof row !== 'string') throw wrong(file, `${place}/row`, 'must be a row');
      return { entry: one['entry'], units, ...(row === undefined ? {} : { row }) };
    }),
    facts: facts.map((one: unknown, index) => {
      if (isPlain(one) && typeof one['key'] === 'string' && 'value' in one) {
        return { key: one['key'], value: one['value'] };
      }
      throw wrong(file, `/facts/${index}`, 'must have a key and a value');
    }),
  };
}

function without(facts: Plain, supposed: Plain): Plain {
  return Object.fromEntries(Object.entries(facts).filter(([key]) => !Object.hasOwn(supposed, key)));
}

function isPlain(value: unknown): value is Plain {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function plainsOf(value: unknown): Plain[] {
  return Array.isArray(value) ? value.filter(isPlain) : [];
}

function isTexts(value: unknown): value is string[] {
  return Array.isArray(value) && value.every((one) => typeof one === 'string');
}

function wrong(file: string, place: string, reason: string): UsageError {
  return new UsageError([file, place, reason].filter(Boolean).join(': '));
}
