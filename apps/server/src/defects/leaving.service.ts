import { Injectable } from '@nestjs/common';
import { join, leaveOnAircraft, proceed, transfer } from '#deferrals';
import { newId } from '#store';
import { MelShelf } from '../mel/mel-shelf.js';
import { type Calling, signed } from './acting.js';
import { ActingService } from './acting.service.js';
import type * as Bodies from './leaving-bodies.js';
import { writeActs } from './defect-book.js';
import { DeferralCheck } from './deferral-check.js';
import { Problem } from '../http/problem.js';
import { thingOf } from './thing-of.js';
import { defectNumber } from './views.js';

/** What is left for a defect besides procedures, its swap to another position, and its second write-up. */
@Injectable()
export class LeavingService {
  constructor(
    private readonly acting: ActingService,
    private readonly shelf: MelShelf,
    private readonly check: DeferralCheck,
  ) {}

  leave(calling: Calling, id: string, body: Bodies.LeftAlteredBody): Promise<object> {
    return this.acting.act(calling, id, body.sign, async (scene) => {
      const by = await signed(scene, 'leave', 'sign-procedure', body.sign);
      return leaveOnAircraft(scene.life, { id: newId(), by, items: body.items.map(thingOf) }, scene.context);
    });
  }

  swapUnit(calling: Calling, id: string, body: Bodies.SwapUnitBody): Promise<object> {
    return this.acting.act(calling, id, body.sign, async (scene) => {
      const by = await signed(scene, 'swap-unit', 'sign-procedure', body.sign);
      const { fromUnit, toUnit, reason, serial, moved } = body;
      const entry = scene.life.item?.entry ?? null;
      const mel = await this.shelf.inForce(scene.tx, scene.aircraft.type);
      const { installed } =
        entry === null
          ? { installed: [fromUnit, toUnit] }
          : this.check.itemOf(mel, scene.aircraft, { entry, units: [toUnit] });
      const parts = serial === undefined ? [] : [{ partNumber: 'as installed', serialOff: serial, serialOn: serial }];
      const others = scene.others.map(({ life }) => life);
      const said = { fromUnit, toUnit, reason, parts, moved, others, installed };
      return transfer(scene.life, { id: newId(), by, ...said }, scene.context);
    });
  }

  /** Both defects change in one transaction; the one that goes on is entered again under the number of this one. */
  join(calling: Calling, id: string, body: Bodies.JoinBody): Promise<object> {
    const entryId = newId();
    return this.acting.act(
      calling,
      id,
      body.sign,
      async (scene) => {
        const by = await signed(scene, 'join', 'defer', body.sign);
        const { life, context, aircraft, row } = scene;
        const other = scene.opened.find((one) => one.row.id === body.other);
        if (!other)
          throw new Problem('not-found', `There is no open item ${body.other} on ${aircraft.registration}.`);
        const sheet = life.sheet ?? defectNumber(aircraft, row);
        const command = { id: newId(), entryId, by, sheet, reason: body.reason };
        return join(life, other.life, command, context).joins;
      },
      async ({ scene, acts, life }) => {
        const [joins] = acts;
        const other = scene.others.find((one) => one.row.id === body.other);
        if (joins?.kind !== 'joined' || !other) return;
        const { by, reason } = joins;
        const sheet = life.sheet ?? defectNumber(scene.aircraft, scene.row);
        const { entered } = join(scene.life, other.life, { id: newId(), entryId, by, sheet, reason }, scene.context);
        const aircraft = await scene.tx.aircraft.lock(scene.aircraft.id);
        if (!aircraft) throw new Error('The aircraft was locked and is gone.');
        const after = proceed(other.life, entered);
        await writeActs(scene.tx, { aircraft, row: other.row, acts: entered, life: after, now: scene.context.now });
      },
    );
  }
}
