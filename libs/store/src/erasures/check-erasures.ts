import type { KeyObject } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { areErasuresSignedBy, type ErasureList, erasureListIn } from '#record';
import { publicKeyOfHex } from '../record/head-key.js';

/** A list of erasures as it was read from a file. */
export interface ErasureFile {
  name: string;
  content: unknown;
}

export interface CheckedErasures {
  name: string;
  list: ErasureList;
}

/** Why a list of erasures is not taken, and which. */
export class ErasuresRefused extends Error {
  override readonly name = 'ErasuresRefused';

  constructor(
    readonly file: string,
    readonly reason: string,
  ) {
    super(`${file}: ${reason}`);
  }
}

/**
 * Holds lists of erasures against the database: each is of one of its operators, signed with a key that signed a head of
 * that operator or that was given, not older than the database, and about people whom the database knows the same way.
 * @throws ErasuresRefused
 */
export async function checkErasures(
  manager: EntityManager,
  files: readonly ErasureFile[],
  keys: readonly KeyObject[],
): Promise<CheckedErasures[]> {
  const operators = await manager.query<{ id: string; code: string }[]>('select id, code from recorded_operators()');
  const checked: CheckedErasures[] = [];
  for (const { name, content } of files) {
    const list = erasureListIn(content);
    if (list === null) throw new ErasuresRefused(name, 'is no list of erasures, or was damaged');
    if (!operators.some(({ id }) => id === list.log)) {
      const here = operators.map(({ code }) => code).join(', ') || 'none';
      throw new ErasuresRefused(name, `is of another operator (${list.operator}); of this database are: ${here}`);
    }
    if (checked.some((one) => one.list.log === list.log)) {
      throw new ErasuresRefused(name, `is the second list of the operator ${list.operator}: give the newest alone`);
    }
    await manager.query("select set_config('app.operator', $1, true)", [list.log]);
    const known = [...keys, ...(await keysOfHeads(manager, list.log))];
    if (!known.some((key) => areErasuresSignedBy(list, key))) throw new ErasuresRefused(name, unsigned(known.length));
    await refuseOther(manager, name, list);
    checked.push({ name, list });
  }
  return checked;
}

function unsigned(keys: number): string {
  if (keys === 0) {
    return 'cannot be checked: no head of the record was signed before the backup. Give --key PUBLIC-KEY.pem, got on another way than the list';
  }
  return 'was altered, or was signed with a key that signed no head of this record; a newer key is given by --key PUBLIC-KEY.pem';
}

async function keysOfHeads(manager: EntityManager, log: string): Promise<KeyObject[]> {
  const rows = await manager.query<{ hex: string }[]>(
    'select distinct public_key as hex from signed_head where operator_id = $1',
    [log],
  );
  return rows.map(({ hex }) => publicKeyOfHex(hex));
}

async function refuseOther(
  manager: EntityManager,
  name: string,
  { people, operator, log }: ErasureList,
): Promise<void> {
  const rows = await manager.query<{ id: string; reference: string; erased: boolean }[]>(
    `select p.id, p.reference, p.salt is null as erased from person p join membership m on m.person_id = p.id
     where m.operator_id = $1`,
    [log],
  );
  const listed = new Map(people.map(({ person, reference }) => [person, reference]));
  if (rows.some(({ id, reference }) => listed.has(id) && listed.get(id) !== reference)) {
    throw new ErasuresRefused(name, `names somebody under another reference than the record of ${operator}`);
  }
  const unlisted = rows.filter(({ id, erased }) => erased && !listed.has(id)).length;
  if (unlisted > 0) {
    throw new ErasuresRefused(
      name,
      `is older than the database: ${unlisted} erased there are not on it. Give the newest`,
    );
  }
}
