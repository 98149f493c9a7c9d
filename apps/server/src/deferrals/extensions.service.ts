import { Inject, Injectable } from '@nestjs/common';
import { admitAsking, deadlineOf, extendInterval, Refusal } from '#deferrals';
import { type ExtensionRow, newId, type Store, type Tx } from '#store';
import { type Calling, type Scene, sceneOf, signed } from '../defects/acting.js';
import { type Acted, ActingService } from '../defects/acting.service.js';
import { livesOf } from '../defects/defect-book.js';
import { readably } from '../defects/readable-refusal.js';
import { aircraftOr404, DispatchService } from '../dispatch/dispatch.service.js';
import { once } from '../http/once.js';
import { Problem, problemType } from '../http/problem.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { actorOf } from '../people/signer.js';
import type { AskExtensionBody, CloseRequestBody, GrantExtensionBody } from './bodies.js';
import { extensionLines } from './extension-lines.js';
import { extensionWords, offerFor, requestOf } from './extension-words.js';

type Role = Parameters<typeof actorOf>[2];

/** Extensions of rectification intervals: one person asks, another grants, and the register keeps all of it. */
@Injectable()
export class ExtensionsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly acting: ActingService,
    private readonly dispatch: DispatchService,
  ) {}

  /** What an extension granted now would give, or why there can be none. */
  async offer(tx: Tx, defectId: string): Promise<object> {
    const row = await tx.defects.get(defectId);
    const [opened] = row ? await livesOf(tx, [row]) : [];
    if (!opened) throw new Problem('not-found', `There is no defect ${defectId} here.`);
    const settings = await this.dispatch.settings(tx);
    const at = this.now();
    const asked = await tx.extensions.asked(defectId);
    const aircraft = await aircraftOr404(tx, opened.row.aircraftId);
    const request = asked ?? { days: null, agreement: null };
    const answer = await answered(() =>
      readably(aircraft, [opened], () => offerFor(opened.life, request, settings, at)),
    );
    const { base } = settings.deferral;
    const extensions = await extensionLines(tx, await tx.extensions.ofDefect(defectId), { now: at, base });
    if ('refused' in answer) return { at, offer: null, refused: answer.refused, extensions };
    const { procedure, limits, noticeDueAt } = answer.given;
    const { lastDay, endsAt } = deadlineOf(limits);
    const explanation = limits.flatMap(({ clock }) => clock?.explanation ?? []).join(' ') || null;
    const lastDayBefore = deadlineOf(opened.life.limits).lastDay;
    const offer = { procedure, lastDayBefore, lastDay, endsAt, noticeDueAt, explanation };
    return { at, offer, refused: null, extensions };
  }

  /** Asks. What cannot be granted is refused at once, so that nobody waits for it. */
  ask(calling: Calling, defectId: string, body: AskExtensionBody): Promise<object> {
    return this.asked(calling, defectId, async (scene) => {
      const { tx, session, context, settings, life } = scene;
      admitAsking(body);
      const { reason, whyNotFixed, plan, parts = null, days = null, agreement = null } = body;
      offerFor(life, { days, agreement }, settings, context.now);
      const open = await tx.extensions.asked(defectId);
      if (open) await this.decide(scene, open, 'replaced', null);
      const request = { reason, whyNotFixed, plan, parts, days, agreement };
      const askedRole = session.roles[0] ?? 'engineer';
      const id = await tx.extensions.add({
        id: newId(),
        defectId,
        state: 'asked',
        askedBy: session.personId,
        askedRole,
        askedAt: context.now,
        ...request,
      });
      await this.record(scene, 'extension.asked', { extension: id, ...request });
      return { status: 201, id };
    });
  }

  /** Closes an open request: the one who asked withdraws it, anybody else declines it. */
  close(calling: Calling, defectId: string, { because }: CloseRequestBody): Promise<object> {
    return this.asked(calling, defectId, async (scene) => {
      const row = await requestOf(scene.tx, defectId);
      const state = row.askedBy === scene.session.personId ? 'withdrawn' : 'declined';
      await this.decide(scene, row, state, because);
      return { status: 200, id: row.id };
    });
  }

  /** Grants the open request, signed, by another person whose authorisation covers it. */
  grant(calling: Calling, defectId: string, { sign }: GrantExtensionBody): Promise<object> {
    let row: ExtensionRow;
    return this.acting.act(
      calling,
      defectId,
      sign,
      async (scene) => {
        const { tx, life, settings, context } = scene;
        row = await requestOf(tx, defectId);
        const extension = await extensionWords(tx, life, settings, context.now);
        const by = await signed(scene, 'extend', 'extend', sign, { extension });
        const { reason, whyNotFixed, plan, askedAt, days, agreement } = row;
        const asker = await actorOf(tx, row.askedBy, row.askedRole as Role);
        return extendInterval(
          life,
          {
            id: newId(),
            by,
            request: {
              by: asker,
              requestedAt: askedAt,
              reason,
              outsideOperatorsControl: true,
              whyNotFixed,
              plan,
            },
            ...(days === null ? {} : { days }),
            ...(agreement === null ? {} : { agreement }),
          },
          context,
        );
      },
      (acted) => this.keepGranted(row, acted),
    );
  }

  private async keepGranted(row: ExtensionRow, { scene, acts, life }: Acted): Promise<void> {
    const { tx, session, context } = scene;
    const act = acts.find(({ kind }) => kind === 'extended');
    if (act?.kind !== 'extended') throw new Error(`Extension ${row.id} was granted by no act.`);
    const [before, after] = [deadlineOf(scene.life.limits), deadlineOf(life.limits)];
    await tx.extensions.change(row.id, row.version, {
      state: 'granted',
      decidedBy: session.personId,
      decidedAt: context.now,
      actId: act.id,
      lastDayBefore: before.lastDay,
      lastDay: after.lastDay,
      endsBefore: before.endsAt,
      endsAt: after.endsAt,
      noticeDueAt: act.noticeDueAt,
    });
  }

  private async decide(
    scene: Scene,
    row: ExtensionRow,
    state: 'declined' | 'withdrawn' | 'replaced',
    because: string | null,
  ): Promise<void> {
    const { tx, session, context } = scene;
    const decided = { decidedBy: session.personId, decidedAt: context.now, decidedBecause: because };
    await tx.extensions.change(row.id, row.version, { state, ...decided });
    await this.record(scene, `extension.${state}`, { extension: row.id, because });
  }

  private async record({ tx, session, aircraft, row, context }: Scene, what: string, payload: object): Promise<void> {
    await tx.record.append({
      who: session.personId,
      authorisation: null,
      organisation: null,
      what,
      aircraft: { id: aircraft.id, registration: aircraft.registration },
      times: { enteredAt: context.now },
      payload: { number: row.number, ...payload },
    });
  }

  /** One step of a request, in one transaction with the aircraft locked; answers the extension as it stands. */
  private asked(
    calling: Calling,
    defectId: string,
    step: (scene: Scene) => Promise<{ status: 200 | 201; id: string }>,
  ): Promise<object> {
    const { session, request, reply } = calling;
    return once(this.store, session, request, reply, async (tx) => {
      const scene = await sceneOf(tx, calling, defectId, () => this.dispatch.settings(tx), this.now);
      const { settings } = scene;
      const { status, id } = await readably(scene.aircraft, scene.opened, () => step(scene));
      const row = await tx.extensions.get(id);
      if (!row) throw new Error(`Extension ${id} was written and is not there.`);
      const context = { now: scene.context.now, base: settings.deferral.base };
      const [extension] = await extensionLines(tx, [row], context);
      return { status, body: { extension }, version: row.version };
    });
  }
}

type Answered<T> = { given: T } | { refused: object };

async function answered<T>(ask: () => Promise<T>): Promise<Answered<T>> {
  try {
    return { given: await ask() };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { code, message, next, paragraph } = error;
    return { refused: { type: problemType(code), sentence: message, next, paragraph } };
  }
}
