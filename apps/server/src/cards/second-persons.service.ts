import { Inject, Injectable } from '@nestjs/common';
import { type Actor, type CardWork, Refusal, secondNeeded, type Signature } from '#deferrals';
import type { Member, Store, Tx } from '#store';
import { type Scene, signedBy } from '../defects/acting.js';
import { secondInWords } from '../defects/second-in-words.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { works } from '../people/members.service.js';
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
  ) {}

  /**
   * Proves the second person before the step is done, and only where nothing but that signature is missing: nobody tries the
   * secret of another at a step that needs none, or that they may not do.
   * @param done does the step as if nobody had signed, and keeps nothing @returns null where nobody was proved
   */
  async prove(
    session: Session,
    second: Bodies.SecondPersonBody | undefined,
    done: () => Promise<unknown>,
  ): Promise<Proof | null> {
    if (second?.secret === undefined || !(await waitsForSignature(done))) return null;
    const { operatorId, personId } = session;
    const { name } = await this.store.withOperator(operatorId, personId, (tx) =>
      colleague(tx, second.person, this.now()),
    );
    return this.signIn.proveBeside(session, second.person, name, second.secret);
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

/** Somebody who works for this operator now, with an account that is not locked. */
async function colleague(tx: Tx, id: string, at: string): Promise<Member> {
  const member = await tx.people.member(id);
  if (member && maySign(member, at)) return member;
  throw refusedSecond('is nobody who works for this operator now', '/second/person');
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
