import { Inject, Injectable } from '@nestjs/common';
import type { HeadExport, Store, Tx } from '#store';
import { DefectViews } from '../defects/defect-views.service.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock, HEADS, STORE, TZDB } from '../http/tokens.js';
import { settingsOf } from '../people/operator-settings.js';
import { aircraftSubject, defectSubject, type Subject } from '../record/exports.service.js';
import type { OtherEntry, ViewOfDefect } from './history-paper.js';

export interface Printed {
  name: string;
  bytes: Buffer;
}

/** Prints histories. What stands on paper is what the pages show, and what the record holds. */
@Injectable()
export class DocumentsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(TZDB) private readonly tzdb: string,
    @Inject(HEADS) private readonly heads: Pick<HeadExport, 'signNow'> | null,
    private readonly views: DefectViews,
  ) {}

  async history(session: Session, of: { aircraft: string } | { defect: string }): Promise<Printed> {
    await this.heads?.signNow();
    // What prints is loaded with the first print: it takes more memory than all of the server's own code.
    const { historyPaper } = await import('./history-paper.js');
    return this.store.withOperator(session.operatorId, session.personId, async (tx) => {
      const subject = 'aircraft' in of ? await aircraftSubject(tx, of.aircraft) : await defectSubject(tx, of.defect);
      const { operator, name } = subject;
      const bytes = await historyPaper({
        subject,
        defects: await this.defectsOf(tx, subject),
        others: await othersOf(tx, subject),
        head: await headOf(tx),
        legalOriginal: settingsOf(operator, this.tzdb).legalOriginal,
        madeAt: this.now(),
      });
      return { name: `history ${name}`, bytes };
    });
  }

  private async defectsOf(tx: Tx, { aircraft, defect }: Subject): Promise<ViewOfDefect[]> {
    const rows = defect ? [defect] : await tx.defects.ofAircraft(aircraft.id);
    const views: ViewOfDefect[] = [];
    for (const { id } of rows) views.push((await this.views.view(tx, id)).body);
    return views;
  }
}

const MOST_ENTRIES = 1_000_000;

/** What stands in the record about the aircraft beside the acts on its defects; nothing for a single defect. */
async function othersOf(tx: Tx, { aircraft, defect }: Subject): Promise<OtherEntry[]> {
  if (defect) return [];
  const entries = await tx.record.ofAircraft(aircraft.id, MOST_ENTRIES);
  const names = await tx.people.namesOf(entries.flatMap(({ entry }) => (entry.who ? [entry.who] : [])));
  return entries
    .filter(({ entry }) => !entry.what.startsWith('defect.'))
    .map(({ entry, number, leaf }) => ({
      number,
      what: entry.what,
      by: entry.who === null ? 'the program' : (names.get(entry.who) ?? '(name erased)'),
      enteredAt: entry.times.enteredAt,
      leaf,
    }));
}

async function headOf(tx: Tx) {
  try {
    return (await tx.proofs.file({ entryIds: [] })).head;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
