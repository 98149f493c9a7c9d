import { Inject, Injectable } from '@nestjs/common';
import {
  type Act,
  defer,
  findNoFault,
  fitPlacard,
  identify,
  proceed,
  raiseInError,
  recordTest,
  rectify,
  replay,
  restore,
  signProcedure,
  undoLeft,
  writeUp,
} from '#deferrals';
import { presetOf } from '#intervals';
import { lockAircraft, newId, type Store } from '#store';
import { DispatchService, flightOr404 } from '../dispatch/dispatch.service.js';
import { askAhead } from '../dispatch/situation-loader.js';
import type { SignBody } from '../http/fields.js';
import { retired } from '../fleet/entering/retired.js';
import { once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { MelShelf } from '../mel/mel-shelf.js';
import { actorOf } from '../people/signer.js';
import { type Calling, type Scene, signed } from './acting.js';
import { ActingService, type Decide } from './acting.service.js';
import type * as Bodies from './bodies.js';
import { concurrenceTo } from './concurrences.js';
import { writeActs } from './defect-book.js';
import { basisAsked, DeferralCheck, statedBasis } from './deferral-check.js';
import { leftBetween } from './repeats.js';
import { thingOf } from './thing-of.js';
import { defectLine } from './views.js';

/** The acts on a defect, from write-up to release. Each one is a rule of libs/deferrals; here they are only carried out. */
@Injectable()
export class DefectsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly acting: ActingService,
    private readonly dispatch: DispatchService,
    private readonly shelf: MelShelf,
    private readonly check: DeferralCheck,
  ) {}

  writeUp(calling: Calling, body: Bodies.WriteUpBody): Promise<object> {
    const { session, request, reply } = calling;
    return once(this.store, session, request, reply, async (tx) => {
      const aircraft = await lockAircraft(tx, body.aircraft);
      if (!aircraft) throw new Problem('not-found', `There is no aircraft ${body.aircraft} here.`);
      if (aircraft.retiredAt !== null) throw retired(aircraft);
      const settings = await this.dispatch.settings(tx);
      const context = { now: this.now(), settings: settings.deferral, elsewhere: [] };
      const operator = await tx.operators.current();
      const by = await actorOf(tx, session.personId, session.roles[0] ?? 'technician');
      const defect = newId();
      const written = writeUp(
        null,
        {
          ...optional(body, ['occurredAt', 'lateReason', 'sheet', 'system', 'faultMessage', 'whenFound']),
          id: newId(),
          by,
          defect,
          recordedAt: body.recordedAt,
          aircraft: { registration: aircraft.registration, type: aircraft.type, operator: operator.code },
          origin: body.origin,
          description: body.description,
        },
        context,
      );
      let life = replay(written);
      const acts: Act[] = [...written];
      if (body.item) {
        const mel = await this.shelf.inForce(tx, aircraft.type);
        const found = this.check.itemOf(mel, aircraft, body.item);
        const identified = identify(life, { id: newId(), by, ...found }, context);
        life = proceed(life, identified);
        acts.push(...identified);
      }
      const row = await writeActs(tx, { aircraft, row: null, acts, life, now: context.now });
      const mel = await this.shelf.inForce(tx, aircraft.type);
      const at = context.now;
      const line = defectLine(row, life, {
        aircraft,
        mel: mel?.mel ?? null,
        at,
        used: null,
        base: settings.deferral.base,
        melStops: presetOf(settings.deferral.preset).melStops,
      });
      return { status: 201, body: { defect: line, signed: null, explanation: null }, version: row.version };
    });
  }

  identify(calling: Calling, id: string, body: Bodies.IdentifyBody): Promise<object> {
    return this.act(calling, id, null, async (scene) => {
      const { tx, session, aircraft, life, context } = scene;
      const by = await actorOf(tx, session.personId, session.roles[0] ?? 'technician');
      const mel = await this.shelf.inForce(tx, aircraft.type);
      return identify(life, { id: newId(), by, ...this.check.itemOf(mel, aircraft, body) }, context);
    });
  }

  defer(calling: Calling, id: string, body: Bodies.DeferBody): Promise<object> {
    const ahead: Calling['ahead'] = (tx, aircraft, row) =>
      Promise.all([askAhead(tx, aircraft), tx.concurrences.ofDefect(row.id, row.version)]);
    return this.act({ ...calling, ahead }, id, body.sign, async (scene) => {
      const { life, context } = scene;
      if (body.row !== undefined && body.document !== undefined) throw twoBases();
      const by = await signed(scene, 'defer', 'defer', body.sign, statedBasis(body, life));
      const mel = await this.melOf(scene);
      const found = body.item ? this.check.itemOf(mel, scene.aircraft, body.item) : null;
      const identified = found ? identify(life, { id: newId(), by, ...found }, context) : [];
      const known = proceed(life, identified);
      const offered = await this.check.offered(scene, known, body);
      // One that is deferred or closed already is refused by its own rule, which says what to do instead.
      if (known.deferral === null && known.closed === null) await this.check.mayStandBesideOthers(scene, known, body);
      const others = scene.others.map((other) => other.life);
      const given = await concurrenceTo(scene, body);
      const command = { id: newId(), by, basis: basisAsked(body), ...given };
      return [...identified, ...defer(known, command, { ...context, offered, others, used: {} })];
    });
  }

  signProcedure(calling: Calling, id: string, body: Bodies.ProcedureBody): Promise<object> {
    return this.act(calling, id, body.sign, async (scene) => {
      const by = await signed(scene, 'procedure', 'sign-procedure', body.sign, { work: body.work });
      if (body.forFlight !== undefined) await flightOr404(scene.tx, scene.aircraft, body.forFlight);
      const leaves = body.leaves.map(thingOf);
      const more = optional(body, ['forFlight', 'lateReason']);
      const leftMeanwhileAt = await leftBetween(scene, body.doneAt);
      return signProcedure(
        scene.life,
        { id: newId(), by, work: body.work, doneAt: body.doneAt, leaves, leftMeanwhileAt, ...more },
        scene.context,
      );
    });
  }

  fitPlacard(calling: Calling, id: string, body: Bodies.PlacardBody): Promise<object> {
    return this.act(calling, id, body.sign, async (scene) => {
      const by = await signed(scene, 'placard', 'sign-procedure', body.sign);
      const { text, where, tag } = body;
      return fitPlacard(scene.life, { id: newId(), by, text, position: where, tag }, scene.context);
    });
  }

  undo(calling: Calling, id: string, body: Bodies.UndoBody): Promise<object> {
    return this.act(calling, id, body.sign, async (scene) => {
      const by = await signed(scene, 'undo', 'sign-procedure', body.sign);
      return undoLeft(scene.life, { id: newId(), by, items: body.items }, scene.context);
    });
  }

  rectify(calling: Calling, id: string, body: Bodies.RectifyBody): Promise<object> {
    return this.act(calling, id, body.sign, async (scene) => {
      const by = await signed(scene, 'rectify', 'sign-procedure', body.sign);
      const { workDone, reference, complete, testAsked, inspectionAsked, partNumber } = body;
      const parts = partNumber === undefined ? [] : [{ partNumber, ...optional(body, ['serialOn', 'serialOff']) }];
      const command = { id: newId(), by, workDone, reference, complete, testAsked, inspectionAsked, parts };
      return rectify(scene.life, command, scene.context);
    });
  }

  test(calling: Calling, id: string, body: Bodies.TestBody): Promise<object> {
    return this.act(calling, id, body.sign, async (scene) => {
      const by = await signed(scene, 'test', 'sign-procedure', body.sign);
      return recordTest(scene.life, { id: newId(), by, test: body.test, result: body.result }, scene.context);
    });
  }

  restore(calling: Calling, id: string, body: Bodies.RestoreBody): Promise<object> {
    return this.act(calling, id, body.sign, async (scene) => {
      const by = await signed(scene, 'restore', 'sign-procedure', body.sign);
      return restore(scene.life, { id: newId(), by, reference: body.reference }, scene.context);
    });
  }

  findNoFault(calling: Calling, id: string, body: Bodies.AnswerBody): Promise<object> {
    return this.act(calling, id, body.sign, async (scene) => {
      const by = await signed(scene, 'no-fault-found', 'release', body.sign);
      const command = { id: newId(), by, checks: body.words, reference: body.reference ?? '' };
      return findNoFault(scene.life, command, scene.context);
    });
  }

  raiseInError(calling: Calling, id: string, body: Bodies.AnswerBody): Promise<object> {
    return this.act(calling, id, body.sign, async (scene) => {
      const by = await signed(scene, 'raised-in-error', 'release', body.sign);
      return raiseInError(scene.life, { id: newId(), by, reason: body.words }, scene.context);
    });
  }

  private act(calling: Calling, id: string, sign: SignBody | null, decide: Decide): Promise<object> {
    return this.acting.act(calling, id, sign, decide);
  }

  private melOf({ tx, aircraft }: Scene) {
    return this.shelf.inForce(tx, aircraft.type);
  }
}

function twoBases(): Problem {
  const reason = 'a deferral stands on one basis: a row or a document, not both';
  return new Problem('invalid-input', reason, { errors: [{ pointer: '/document', reason }] });
}

/** Only the keys that are there: an absent key and one that is undefined are not the same to a rule. */
function optional<T extends object, K extends keyof T>(
  from: T,
  keys: readonly K[],
): { [P in K]?: NonNullable<T[P]> } {
  return Object.fromEntries(keys.filter((key) => from[key] !== undefined).map((key) => [key, from[key]])) as {
    [P in K]?: NonNullable<T[P]>;
  };
}
