import { Inject, Injectable } from '@nestjs/common';
import { type Act, type DefectLife, proceed } from '#deferrals';
import { presetOf } from '#intervals';
import type { DefectRow, Store } from '#store';
import { DispatchService } from '../dispatch/dispatch.service.js';
import type { SignBody } from '../http/fields.js';
import { once } from '../http/once.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { MelShelf } from '../mel/mel-shelf.js';
import { SignInService } from '../people/sign-in.service.js';
import { type Calling, confirmation, type Scene, sceneOf } from './acting.js';
import { writeActs } from './defect-book.js';
import { readably } from './readable-refusal.js';
import { arithmeticOf, defectLine } from './views.js';

export type Decide = (scene: Scene) => Promise<Act[]>;

/** What was decided and written. */
export interface Acted {
  scene: Scene;
  acts: readonly Act[];
  life: DefectLife;
  row: DefectRow;
}

const BRING_A_DEADLINE = new Set<Act['kind']>(['deferred', 'row-changed', 'extended']);

const TAKES_A_ROW = new Set<Act['kind']>(['deferred', 'row-changed']);

/** Carries out one act on one defect: the secret proved, the aircraft locked, everything in one transaction. */
@Injectable()
export class ActingService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly signIn: SignInService,
    private readonly dispatch: DispatchService,
    private readonly shelf: MelShelf,
  ) {}

  /** What would be decided now, or refused; nothing is written. */
  attempt({ session, request }: Calling, id: string, decide: Decide): Promise<Act[]> {
    return this.store.withOperator(session.operatorId, session.personId, async (tx) =>
      decide(await sceneOf(tx, { session, request }, id, () => this.dispatch.settings(tx), this.now)),
    );
  }

  /**
   * @param sign null where the act is not signed
   * @param also what else is written in the same transaction, once the act stands
   */
  async act(
    calling: Calling,
    id: string,
    sign: SignBody | null,
    decide: Decide,
    also: (acted: Acted) => Promise<void> = () => Promise.resolve(),
  ): Promise<object> {
    const { session, request, reply } = calling;
    const proof = sign === null ? null : await this.signIn.proveAgain(session, sign, request);
    return once(this.store, session, request, reply, async (tx) => {
      const scene = await sceneOf(tx, { ...calling, proof }, id, () => this.dispatch.settings(tx), this.now);
      const { aircraft, row, context, settings } = scene;
      const { acts, life } = await readably(aircraft, scene.opened, async () => {
        const decided = await decide(scene);
        return { acts: decided, life: proceed(scene.life, decided) };
      });
      const mel = await this.shelf.inForce(tx, aircraft.type);
      const melRevisionId = acts.some(({ kind }) => TAKES_A_ROW.has(kind)) ? (mel?.revision.id ?? null) : undefined;
      const after = await writeActs(tx, {
        aircraft,
        row,
        acts,
        life,
        now: context.now,
        ...(melRevisionId === undefined ? {} : { melRevisionId }),
      });
      await also({ scene, acts, life, row: after });
      const { base, preset } = settings.deferral;
      const line = defectLine(after, life, {
        aircraft,
        mel: mel?.mel ?? null,
        at: context.now,
        used: null,
        base,
        melStops: presetOf(preset).melStops,
      });
      const body = { defect: line, signed: confirmation(acts), explanation: explanationOf(life, acts) };
      return { status: 200, body, version: after.version };
    });
  }
}

function explanationOf(life: DefectLife, acts: readonly Act[]): string | null {
  return acts.some(({ kind }) => BRING_A_DEADLINE.has(kind)) ? arithmeticOf(life) : null;
}
