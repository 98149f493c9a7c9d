/** Signatures as anybody reads them: who, with which licence, in which role, when, of what, and whether they verify. */
import type { SignatureRow, Tx } from '#store';
import { baseTime } from '../record/base-time.js';
import { misfitsOfSignature, recordedWith } from './kept-signature.js';

/** Kept with a signature of the trade; one under the operator's settings holds roles instead. */
interface KeptAuthorisation {
  number?: string;
  organisation?: { name: string; approval: string };
}

export async function signatureViews(tx: Tx, rows: readonly SignatureRow[]): Promise<object[]> {
  const entryIds = rows.map(({ entryId }) => entryId);
  const bytes = await tx.record.bytesOf(entryIds);
  const numbers = await tx.record.numbersOf(entryIds);
  const people = await tx.people.known([...new Set(rows.map(({ personId }) => personId))]);
  const { base } = await tx.operators.current();
  return rows.map((row) => {
    const canonical = bytes.get(row.entryId);
    if (!canonical) throw new Error(`Signature ${row.id} stands with no entry.`);
    const person = people.get(row.personId);
    const { what, aircraft, signed } = recordedWith(canonical);
    const { number, organisation } = row.authorisation as KeptAuthorisation;
    const misfits = misfitsOfSignature(row, canonical, person?.reference ?? null);
    return {
      id: row.id,
      by: person?.name ?? '(name erased)',
      role: signed.role ?? 'technician',
      licence: person ? (person.licenceNumber ?? number ?? null) : '(erased)',
      authorisation: number ?? null,
      organisation: organisation ? `${organisation.name} (${organisation.approval})` : null,
      statement: row.statement,
      signedAt: row.signedAt,
      signedAtBase: baseTime(row.signedAt, base),
      method: row.method,
      evidence: row.evidence,
      what,
      registration: aircraft?.registration ?? null,
      entry: row.entryId,
      sealedAs: numbers.get(row.entryId) ?? null,
      contentSha256: row.contentSha256,
      verifies: misfits.length === 0,
      misfits,
    };
  });
}
