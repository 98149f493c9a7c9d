import { Inject, Injectable } from '@nestjs/common';
import type { ProofFile } from '#record';
import type { AircraftRow, DefectRow, HeadExport, OperatorRow, Store, Tx } from '#store';
import { defectNumber } from '../defects/views.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock, HEADS, STORE } from '../http/tokens.js';
import { CAUTIONS } from './cautions.js';
import { referencesIn } from './references.js';

/** What a history is of: one aircraft whole, or one of its defects. */
export interface Subject {
  operator: OperatorRow;
  aircraft: AircraftRow;
  defect: DefectRow | null;
  /** `Q-ABC` or `Q-ABC/3`. */
  name: string;
}

/** A history as it leaves the house: what can be proved, and what is only told. */
export interface ExportedHistory extends ProofFile {
  about: { operator: string; subject: string; madeAt: string; notIn: number };
  /** Names behind the references, as they stand today; the record itself names nobody. Null for an erased person. */
  people: Record<string, { name: string; licence: string | null } | null>;
  cautions: readonly string[];
  check: string;
}

const CHECK =
  'proviso record check FILE --key PUBLIC-KEY.pem; get the key from the operator on another way than this file.';

/** Histories that somebody outside can check without the house. */
@Injectable()
export class ExportsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(HEADS) private readonly heads: Pick<HeadExport, 'signNow'> | null,
  ) {}

  /** The whole history of an aircraft or of a defect, entry by entry. */
  async history(session: Session, of: { aircraft: string } | { defect: string }): Promise<ExportedHistory> {
    await this.heads?.signNow();
    return this.store.withOperator(session.operatorId, session.personId, async (tx) => {
      const subject = 'aircraft' in of ? await aircraftSubject(tx, of.aircraft) : await defectSubject(tx, of.defect);
      const { operator, aircraft, defect, name } = subject;
      const entryIds = await tx.proofs.entriesOf(aircraft.id, defect?.id ?? null);
      const file = await proofOf(tx, { entryIds });
      return {
        ...file,
        about: {
          operator: `${operator.name} (${operator.code})`,
          subject: name,
          madeAt: this.now(),
          notIn: entryIds.length - file.entries.length,
        },
        people: await peopleIn(tx, file),
        cautions: CAUTIONS,
        check: CHECK,
      };
    });
  }

  /** The proof of one entry, or of how the record grew since a head that was signed earlier, or of both. */
  async proof(session: Session, { entry, since }: { entry?: number; since?: number }): Promise<ProofFile> {
    await this.heads?.signNow();
    return this.store.withOperator(session.operatorId, session.personId, async (tx) => {
      const id = entry === undefined ? null : await tx.proofs.entryNumbered(entry);
      if (entry !== undefined && id === null) throw new Problem('not-found', `There is no entry ${entry} here.`);
      return proofOf(tx, { entryIds: id === null ? [] : [id], ...(since === undefined ? {} : { since }) });
    });
  }
}

/** A range that is not there is the asker's mistake. */
async function proofOf(tx: Tx, asked: Parameters<Tx['proofs']['file']>[0]): Promise<ProofFile> {
  try {
    return await tx.proofs.file(asked);
  } catch (error) {
    if (error instanceof RangeError) throw new Problem('not-found', error.message);
    throw error;
  }
}

export async function aircraftSubject(tx: Tx, id: string): Promise<Subject> {
  const aircraft = await tx.aircraft.get(id);
  if (!aircraft) throw new Problem('not-found', `There is no aircraft ${id} here.`);
  return { operator: await tx.operators.current(), aircraft, defect: null, name: aircraft.registration };
}

export async function defectSubject(tx: Tx, id: string): Promise<Subject> {
  const defect = await tx.defects.get(id);
  const aircraft = defect ? await tx.aircraft.get(defect.aircraftId) : null;
  if (!defect || !aircraft) throw new Problem('not-found', `There is no defect ${id} here.`);
  return { operator: await tx.operators.current(), aircraft, defect, name: defectNumber(aircraft, defect) };
}

async function peopleIn(tx: Tx, { entries }: ProofFile): Promise<ExportedHistory['people']> {
  const references = [...new Set(entries.flatMap(({ canonical }) => referencesIn(JSON.parse(canonical))))];
  const known = await tx.people.behind(references);
  return Object.fromEntries(
    references.map((reference) => {
      const person = known.get(reference);
      return [reference, person ? { name: person.name, licence: person.licenceNumber } : null];
    }),
  );
}
