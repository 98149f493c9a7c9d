import { Inject, Injectable } from '@nestjs/common';
import {
  type Act,
  type DocumentOwner,
  endDocument,
  findOnAircraft,
  fitUnderDocument,
  giveShift,
  type Moved,
  proceed,
  type RegisterAct,
  removeFromAircraft,
  replayRegister,
  seeRemoval,
  takeShift,
} from '#deferrals';
import { newId, type Store } from '#store';
import { readably } from '../defects/readable-refusal.js';
import { thingOf } from '../defects/thing-of.js';
import { writeActs } from '../defects/defect-book.js';
import { DispatchService } from '../dispatch/dispatch.service.js';
import type { Called } from '../http/called.js';
import type { SignBody } from '../http/fields.js';
import { once } from '../http/once.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { actorOf } from '../people/signer.js';
import { SignInService } from '../people/sign-in.service.js';
import type * as Bodies from './bodies.js';
import { askedOf } from './asked-of.js';
import { askCorrectionOf, lookOf, stayOf } from './correcting.js';
import type { DecidedOnRegister } from './decided.js';
import { movedOf } from './moving.js';
import { writeRegisterActs } from './register-book.js';
import { type RegisterScene, registerSceneOf, signedOnRegister } from './register-scene.js';
import { shiftListOf } from './shift-list.js';

type Decide = (scene: RegisterScene) => Promise<DecidedOnRegister>;

/** The acts on what is left on an aircraft, whoever owns it, and the hand-over of the whole list. */
@Injectable()
export class RegisterService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly signIn: SignInService,
    private readonly dispatch: DispatchService,
  ) {}

  find(calling: Called, { items, remarks }: Bodies.FoundBody): Promise<object> {
    return this.act(calling, null, async (scene) => {
      const { tx, session, life, aircraft, context } = scene;
      const by = await actorOf(tx, session.personId, session.roles[0] ?? 'technician');
      const said = { items: items.map(thingOf), ...(remarks === undefined ? {} : { remarks }) };
      return onRegister(findOnAircraft(life, { id: newId(), by, aircraft, ...said }, context));
    });
  }

  fit(calling: Called, { items, owner, sign }: Bodies.FittedBody): Promise<object> {
    return this.act(calling, sign, async (scene) => {
      const by = await signedOnRegister(scene, { act: 'fitted', privilege: 'sign-procedure', sign });
      const command = { id: newId(), by, aircraft: scene.aircraft, items: items.map(thingOf), owner: ownerOf(owner) };
      return onRegister(fitUnderDocument(scene.life, command, scene.context));
    });
  }

  remove(calling: Called, { items, sign }: Bodies.ThingsBody): Promise<object> {
    return this.act(calling, sign, async (scene) => {
      const by = await signedOnRegister(scene, { act: 'removed', privilege: 'sign-procedure', sign });
      const { life, aircraft, context } = scene;
      const elsewhere = context.elsewhere.filter(({ owner }) => owner?.kind === 'defect');
      return onRegister(removeFromAircraft(life, { id: newId(), by, aircraft, items }, { ...context, elsewhere }));
    });
  }

  see(calling: Called, { items, sign }: Bodies.ThingsBody): Promise<object> {
    return this.act(calling, sign, async (scene) => {
      const by = await signedOnRegister(scene, { act: 'seen', privilege: 'sign-procedure', sign });
      const { life, aircraft, context } = scene;
      return onRegister(seeRemoval(life, { id: newId(), by, aircraft, items }, context));
    });
  }

  end(calling: Called, { document, reason, sign }: Bodies.EndedBody): Promise<object> {
    return this.act(calling, sign, async (scene) => {
      const by = await signedOnRegister(scene, { act: 'ended', privilege: 'sign-procedure', sign });
      const { life, aircraft, context } = scene;
      const command = { id: newId(), by, aircraft, owner: ownerOf(document), reason };
      return onRegister(endDocument(life, command, context));
    });
  }

  move(calling: Called, body: Bodies.MoveBody): Promise<object> {
    return this.act(calling, body.sign, async (scene) => {
      const by = await signedOnRegister(scene, { act: 'move', privilege: 'sign-procedure', sign: body.sign });
      return decidedBy(movedOf(scene, body, by, body.document === undefined ? null : ownerOf(body.document)));
    });
  }

  askCorrection(calling: Called, body: Bodies.CorrectionBody): Promise<object> {
    return this.act(calling, body.sign, async (scene) => {
      const by = await signedOnRegister(scene, { act: 'correction', privilege: 'write-up', sign: body.sign });
      return askCorrectionOf(scene, body, by);
    });
  }

  look(calling: Called, body: Bodies.SecondLookBody): Promise<object> {
    return this.act(calling, body.sign, async (scene) => {
      const secondLook = await signedOnRegister(scene, { act: 'second-look', privilege: 'inspect', ...body });
      return lookOf(scene, body.asked, secondLook);
    });
  }

  stay(calling: Called, { asked, reason, sign }: Bodies.AsWrittenBody): Promise<object> {
    return this.act(calling, sign, async (scene) => {
      const { person } = askedOf(scene, asked).by;
      const takenBack = person === scene.session.personId;
      const [act, privilege] = takenBack
        ? (['taken-back', 'write-up'] as const)
        : (['as-written', 'inspect'] as const);
      return stayOf(scene, { asked, reason, by: await signedOnRegister(scene, { act, privilege, sign, asked }) });
    });
  }

  give(calling: Called, { to, note, sign }: Bodies.HandOverBody): Promise<object> {
    return this.act(calling, sign, async (scene) => {
      const by = await signedOnRegister(scene, { act: 'give', privilege: 'sign-procedure', sign });
      const { tx, row, opened, life, aircraft, context } = scene;
      const list = await shiftListOf(tx, row, opened);
      const command = { id: newId(), by, aircraft, list, to, ...(note === undefined ? {} : { note }) };
      return onRegister(giveShift(life, command, context));
    });
  }

  take(calling: Called, { given, remarks, sign }: Bodies.TakeOverBody): Promise<object> {
    return this.act(calling, sign, async (scene) => {
      const by = await signedOnRegister(scene, { act: 'take', privilege: 'sign-procedure', sign });
      const { tx, row, opened, life, aircraft, context } = scene;
      const list = await shiftListOf(tx, row, opened);
      const command = { id: newId(), by, aircraft, given, list, ...(remarks === undefined ? {} : { remarks }) };
      return onRegister(takeShift(life, command, context));
    });
  }

  /** The signer proved, the aircraft held, everything in one transaction. */
  private async act(calling: Called, sign: SignBody | null, decide: Decide): Promise<object> {
    const { session, request, reply } = calling;
    const proof = sign === null ? null : await this.signIn.proveAgain(session, sign, request);
    return once(this.store, session, request, reply, async (tx) => {
      const scene = await registerSceneOf(tx, calling, proof, await this.dispatch.settings(tx), this.now());
      const { register, defects } = await readably(scene.row, scene.opened, async () => {
        const decided = await decide(scene);
        replayRegister(decided.register, scene.life);
        return decided;
      });
      await writeRegisterActs(tx, scene.row, scene.life, register);
      for (const { id, acts } of defects) await writeOnDefect(scene, id, acts);
      const touched = defects.some(({ acts }) => acts.length > 0);
      const version = touched ? (await tx.aircraft.get(scene.row.id))?.version : await tx.aircraft.touch(scene.row);
      const by = register.at(-1)?.by ?? defects.at(-1)?.acts.at(-1)?.by;
      const done = { status: 200 as const, body: { done: true, by: by?.name ?? '' } };
      return version === undefined ? done : { ...done, version };
    });
  }
}

async function writeOnDefect({ tx, row, opened, context }: RegisterScene, id: string, acts: Act[]): Promise<void> {
  if (acts.length === 0) return;
  const found = opened.find((one) => one.row.id === id);
  const aircraft = await tx.aircraft.lock(row.id);
  const current = await tx.defects.get(id);
  if (!found || !aircraft || !current) throw new Error(`Defect ${id} was read and is gone.`);
  await writeActs(tx, { aircraft, row: current, acts, life: proceed(found.life, acts), now: context.now });
}

function onRegister(register: RegisterAct[]): DecidedOnRegister {
  return { register, defects: [] };
}

/** Who takes is written before who gives: at no moment does the register show a thing without an owner. */
function decidedBy({ moved, from, to }: { moved: Moved; from: string; to: string }): DecidedOnRegister {
  const { gives, takes, register } = moved;
  return {
    register,
    defects: [
      { id: to, acts: takes },
      { id: from, acts: gives },
    ],
  };
}

function ownerOf({ kind, reference, until }: Bodies.OwnerDocumentBody): DocumentOwner {
  return { kind, reference, until: until === undefined ? null : new Date(until).toISOString() };
}
