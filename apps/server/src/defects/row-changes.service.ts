import { Injectable } from '@nestjs/common';
import { changeRow, type DefectLife } from '#deferrals';
import { newId } from '#store';
import { countedFrom, usedOf } from '../dispatch/flown.js';
import { flownLegs } from '../movements/flown-legs.js';
import { type Calling, type Scene, signed } from './acting.js';
import { ActingService } from './acting.service.js';
import type { ChangeRowBody } from './bodies.js';
import { concurrenceTo } from './concurrences.js';
import { livesOf } from './defect-book.js';
import { basisWords, DeferralCheck } from './deferral-check.js';

/** Puts another row in the place of the one in force. What is used up, and what is over, the rules of deferrals refuse. */
@Injectable()
export class RowChangesService {
  constructor(
    private readonly acting: ActingService,
    private readonly check: DeferralCheck,
  ) {}

  change(calling: Calling, id: string, body: ChangeRowBody): Promise<object> {
    return this.acting.act(calling, id, body.sign, async (scene) => {
      const { tx, aircraft, row, life, context } = scene;
      const by = await signed(scene, 'change-row', 'defer', body.sign, { basis: basisWords(body, life) });
      const legs = await flownLegs(tx, aircraft.id, countedFrom([{ row, life }], context.now));
      const acts = changeRow(
        life,
        {
          id: newId(),
          by,
          basis: { kind: 'mel-row', row: body.row },
          reason: body.reason,
          ...(await concurrenceTo(scene, { row: body.row })),
          ...(body.causeClosed === undefined ? {} : { causeClosed: body.causeClosed }),
        },
        {
          ...context,
          offered: await this.check.offered(scene, life, body),
          others: [...scene.others.map((other) => other.life), ...(await this.closedBeside(scene))],
          used: usedOf(life, legs, context.settings.counting) ?? {},
        },
      );
      await this.check.mayStandBesideOthers(scene, life, body);
      return acts;
    });
  }

  /** Closed defects of the same entry: one of them may have been what asked for the stricter row. */
  private async closedBeside({ tx, aircraft, life }: Scene): Promise<DefectLife[]> {
    const entry = life.item?.entry ?? null;
    if (entry === null) return [];
    const closed = await tx.defects.closedOn(aircraft.id, entry);
    return (await livesOf(tx, closed)).map((one) => one.life);
  }
}
