import { Inject, Injectable } from '@nestjs/common';
import { type Actor, type CardWork, Refusal, secondNeeded, type Signature } from '#deferrals';
import type { Member, Store, Tx } from '#store';
import { type Scene, signedBy } from '../defects/acting.js';
import { livesOf } from '../defects/defect-book.js';
import { secondInWords } from '../defects/second-in-words.js';
import type { Called } from '../http/called.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { works } from '../people/members.service.js';
import { PasskeysBeside, type SecondSigner } from '../people/passkeys-beside.service.js';
import type { Proof } from '../people/proof.js';
import { SignInService } from '../people/sign-in.service.js';
import { actorOf } from '../people/signer.js';
import type * as Bodies from './bodies.js';

/** The second person at a step: signs on the device of whoever does it, and is signed in nowhere by that. */
@Injectable()
export class SecondPersons {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly signIn: SignInService,
    private readonly passkeys: PasskeysBeside,
  ) {}

  /** What the browser is asked for, so that a passkey of the second person signs this statement for this step. */
  async ask({ session, request, id }: Called, body: Bodies.SecondAskedBody): Promise<object> {
    const { work, step, person, statement } = body;
    if (person === session.personId) throw refusedSecond('is whoever does the step', '/person');
    const signer = await this.store.withOperator(session.operatorId, session.personId, async (tx) => {
      const row = await tx.defects.get(id);
      const [opened] = row ? await livesOf(tx, [row]) : [];
      if (!opened) throw new Problem('not-found', `There is no defect ${id} here.`);
      const open = opened.life.cards.find(({ started, ended }) => started.id === work && ended === null);
      const asked = open?.started.card.steps.find((one) => one.id === step);
      if (!asked || !secondNeeded(asked)) throw refusedSecond('is not asked for at this step', '/step');
      return signerOf(await colleague(tx, person, this.now(), '/person'));
    });
    return this.passkeys.ask(session, signer, aboutStep(id, { work, step }, statement), request);
  }

  /**
   * Proves the second person before the step is done, and only where nothing but that signature is missing: nobody tries the
   * secret of another at a step that needs none, or that they may not do.
   * @param done does the step as if nobody had signed, and keeps nothing @returns null where nobody was proved
   */
  async prove(
    { session, request, id }: Pick<Called, 'session' | 'request' | 'id'>,
    { second, ...of }: Bodies.StepBody,
    done: () => Promise<unknown>,
  ): Promise<Proof | null> {
    if (second === undefined) return null;
    const { secret, passkey, statement = '' } = second;
    if (secret !== undefined && passkey !== undefined) throw refusedSecond('signs in one way, not in two', '/second');
    if ((secret ?? passkey) === undefined || !(await waitsForSignature(done))) return null;
    const signer = await this.store.withOperator(session.operatorId, session.personId, async (tx) =>
      signerOf(await colleague(tx, second.person, this.now())),
    );
    if (passkey === undefined) return this.signIn.proveBeside(session, signer.personId, signer.name, secret ?? '');
    return this.passkeys.prove(session, signer, passkey, { about: aboutStep(id, of, statement), request });
  }

  /** As the rule takes it: a signature where the person was proved, otherwise only who was named. */
  async of(
    scene: Scene,
    { work, step, second }: Bodies.StepBody,
    proof: Proof | null,
  ): Promise<{ second?: Actor | Signature }> {
    if (second === undefined) return {};
    const { tx, life, context } = scene;
    const started = life.cards.find((one) => one.started.id === work)?.started;
    const asked = started?.card.steps.find(({ id }) => id === step);
    const needed = asked && secondNeeded(asked);
    if (asked && !needed) throw refusedSecond('is not asked for at this step', '/second');
    const member = await colleague(tx, second.person, context.now);
    const role = member.roles[0] ?? 'technician';
    if (proof === null) return { second: await actorOf(tx, second.person, role) };
    const said = { work: started?.card.title ?? work, step: secondInWords(life, work, step) };
    const signer = { personId: second.person, role, proof };
    const sign = { statement: second.statement ?? '' };
    return { second: await signedBy(scene, signer, 'card-second', needed?.privilege ?? null, sign, said) };
  }
}

/** Whether the step is refused for the one reason that its second person did not sign. */
async function waitsForSignature(done: () => Promise<unknown>): Promise<boolean> {
  try {
    await done();
    return false;
  } catch (error) {
    if (error instanceof Refusal) return error.code === 'second-person-unsigned';
    // Whatever else is wrong with the request is said when the step itself is tried.
    if (error instanceof Problem) return false;
    throw error;
  }
}

/** What a passkey signs, and for which step of which work: it is worth nothing at another. */
const aboutStep = (defect: string, { work, step }: { work: string; step: string }, statement: string): string =>
  JSON.stringify([statement, defect, work, step]);

const signerOf = ({ personId, name }: Member): SecondSigner => ({ personId, name });

/** Somebody who works for this operator now, with an account that is not locked. */
async function colleague(tx: Tx, id: string, at: string, pointer = '/second/person'): Promise<Member> {
  const member = await tx.people.member(id);
  if (member && maySign(member, at)) return member;
  throw refusedSecond('is nobody who works for this operator now', pointer);
}

function refusedSecond(reason: string, pointer: string): Problem {
  return new Problem('invalid-input', `The second person ${reason}.`, { errors: [{ pointer, reason }] });
}

export const needsTwo = ({ started }: CardWork): boolean =>
  started.card.steps.some((step) => secondNeeded(step) !== undefined);

/** Who may be named as a second person. */
export async function colleagues(tx: Tx, at: string): Promise<{ id: string; name: string; roles: string[] }[]> {
  const members = (await tx.people.members()).filter((member) => maySign(member, at));
  return members.map(({ personId, name, roles }) => ({ id: personId, name, roles }));
}

const maySign = (member: Member, at: string): boolean => member.lockedAt === null && works(member, at);
