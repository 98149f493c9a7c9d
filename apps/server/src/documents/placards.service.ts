import { Inject, Injectable } from '@nestjs/common';
import { FIELD_WORDS } from '#deferrals';
import type { Store } from '#store';
import { DefectViews } from '../defects/defect-views.service.js';
import type { DefectLine } from '../defects/views.js';
import { sayDay } from '../deferrals/say-time.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import type { Printed } from './documents.service.js';
import type { PlacardLabel } from './placard-labels.js';

export type LabelSize = 'a4' | 'roll';

/** Prints the placards that a deferral asks for. */
@Injectable()
export class PlacardsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly views: DefectViews,
  ) {}

  /** @param origin where the pages are read, for the code that opens the deferral */
  labels(session: Session, defectId: string, size: LabelSize, origin: string): Promise<Printed> {
    return this.store.withOperator(session.operatorId, session.personId, async (tx) => {
      const { body } = await this.views.view(tx, defectId);
      const { defect } = body;
      const labels = labelsOf(defect, `${origin}/defects/${defect.id}`);
      if (labels.length === 0) {
        throw new Problem('not-found', `No placard is asked for by ${defect.basis ?? 'this write-up'}.`);
      }
      const operator = await tx.operators.current();
      const title = `Placards of ${defect.number}`;
      const of = { title, operator, labels, madeAt: this.now() };
      // What prints is loaded with the first print: it takes more memory than all of the server's own code.
      const { placardRoll, placardSheet } = await import('./placard-labels.js');
      const bytes = await (size === 'roll' ? placardRoll(of) : placardSheet(of));
      return { name: `placards ${defect.number}`, bytes };
    });
  }
}

/** The row's own placard, then those of the items that are considered inoperative with it; one asked for twice, once. */
function labelsOf(defect: DefectLine, address: string): PlacardLabel[] {
  const own = { title: defect.title, units: defect.units, placard: defect.placard };
  const brought = defect.brought.map(({ title, placard }) => ({ title, units: [], placard }));
  const asked = [own, ...brought].flatMap((one) => (one.placard === null ? [] : [{ ...one, placard: one.placard }]));
  const once = asked.filter(({ placard: { text, position } }, index) => {
    const same = (other: (typeof asked)[number]) =>
      other.placard.text === text && other.placard.position === position;
    return asked.findIndex(same) === index;
  });
  return once.map(({ title, units, placard }, index) => ({
    number: `${defect.number}-${index + 1}`,
    text: placard.text,
    position: placard.position,
    item: units.length === 0 ? title : `${title}, ${units.join(' or ')}`,
    until: untilWords(defect),
    fitted: placard.fitted,
    corrected: units.length === 0 ? null : correctedWords(defect),
    address,
  }));
}

function untilWords({ deadline }: DefectLine): string | null {
  if (!deadline?.lastDay) return null;
  return `to the end of ${sayDay(deadline.lastDay)} (${deadline.base})`;
}

/** A label that was printed before may name another unit: the new one says so. */
function correctedWords({ corrected }: DefectLine): string | null {
  const units = corrected.filter(({ field }) => field === FIELD_WORDS.unit);
  return units.length === 0 ? null : `corrected, was ${units.map(({ was }) => was ?? 'nothing').join(', then ')}`;
}
