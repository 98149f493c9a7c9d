import { Inject, Injectable } from '@nestjs/common';
import { type Actor, type CardWork, secondNeeded, type Signature } from '#deferrals';
import type { Member, Store, Tx } from '#store';
import { type Scene, signedBy } from '../defects/acting.js';
import { secondInWords } from '../defects/second-in-words.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
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
   * Proves the second person before anything is locked. Whoever does the step is left to the rule, which says that nobody
   * is their own second person. @returns null where nobody was proved
   */
  async prove(session: Session, second: Bodies.SecondPersonBody | undefined): Promise<Proof | null> {
    if (second?.secret === undefined || second.person === session.personId) return null;
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
    const member = await colleague(tx, second.person, context.now);
    const role = member.roles[0] ?? 'technician';
    if (proof === null) return { second: await actorOf(tx, second.person, role) };
    const started = life.cards.find((one) => one.started.id === work)?.started;
    const asked = started?.card.steps.find(({ id }) => id === step);
    const privilege = (asked && secondNeeded(asked)?.privilege) ?? 'sign-procedure';
    const said = { work: started?.card.title ?? work, step: secondInWords(life, work, step) };
    const signer = { personId: second.person, role, proof };
    const sign = { statement: second.statement ?? '' };
    return { second: await signedBy(scene, signer, 'card-second', privilege, sign, said) };
  }
}

/** Somebody who works for this operator now. */
async function colleague(tx: Tx, id: string, at: string): Promise<Member> {
  const member = await tx.people.member(id);
  if (member && worksAt(member, at)) return member;
  const reason = 'is nobody who works for this operator now';
  const errors = [{ pointer: '/second/person', reason }];
  throw new Problem('invalid-input', `The second person ${reason}.`, { errors });
}

export const needsTwo = ({ started }: CardWork): boolean =>
  started.card.steps.some((step) => secondNeeded(step) !== undefined);

/** Who may be named as a second person. */
export async function colleagues(tx: Tx, at: string): Promise<{ id: string; name: string; roles: string[] }[]> {
  const members = (await tx.people.members()).filter((member) => worksAt(member, at));
  return members.map(({ personId, name, roles }) => ({ id: personId, name, roles }));
}

const worksAt = ({ validFrom, validUntil }: Member, at: string): boolean =>
  validFrom <= at && (validUntil === null || at < validUntil);
