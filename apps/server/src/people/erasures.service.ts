/**
 * The personal data of somebody who left are erased once nothing asks for them any longer. What the person did stays in
 * the record under a reference that then names nobody; every proof over it holds as before.
 */
import { Inject, Injectable } from '@nestjs/common';
import type { HeadExport, Member, Store, Tx } from '#store';
import type { Called } from '../http/called.js';
import { once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock, HEADS, STORE } from '../http/tokens.js';
import type { ErasureBody } from './bodies.js';
import { keepSignature, signedPart } from './kept-signature.js';
import { refuseWhileBound } from './kept-until.js';
import { memberView } from './members.service.js';
import { SignInService } from './sign-in.service.js';
import { WrittenNamesService } from './written-names.service.js';

export const ERASING_ROLES = ['quality', 'administrator'] as const;

@Injectable()
export class ErasuresService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(HEADS) private readonly heads: Pick<HeadExport, 'signNow'> | null,
    private readonly signIn: SignInService,
    private readonly written: WrittenNamesService,
  ) {}

  async statement(tx: Tx, id: string): Promise<object> {
    return { act: 'erasure', statement: statementOf(await this.erasable(tx, id)) };
  }

  async writtenNames(tx: Tx, id: string): Promise<object> {
    const member = await tx.people.member(id);
    if (!member) throw new Problem('not-found', `Nobody with the id ${id} works or worked here.`);
    if ((await tx.people.erasedOnes()).has(member.reference)) throw erasedAlready();
    return this.written.of(tx, member);
  }

  async erase({ session, request, reply, id }: Called, { reason, sign }: ErasureBody): Promise<object> {
    if (id === session.personId) throw new Problem('not-for-oneself', 'Nobody erases themselves.');
    const proof = await this.signIn.proveAgain(session, sign, request);
    let words: string[] = [];
    const answer = await once(this.store, session, request, reply, async (tx) => {
      const member = await this.erasable(tx, id);
      const statement = statementOf(member);
      if (sign.statement !== statement) {
        throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
      }
      refuseNameIn(reason, member);
      const written = await this.written.of(tx, member);
      const now = this.now();
      const role = ERASING_ROLES.find((one) => session.roles.includes(one)) ?? 'administrator';
      const authorisation = { roles: session.roles };
      const given = { person: session.personId, role, statement, ...proof, signedAt: now, authorisation };
      const by = await tx.people.referenceOf(session.personId);
      if (!(await tx.people.erase(id, now, by))) throw erasedAlready();
      const entry = await tx.record.append({
        who: session.personId,
        authorisation: null,
        organisation: null,
        what: 'person.erased',
        aircraft: null,
        times: { enteredAt: now },
        payload: { person: member.reference, reason, signature: signedPart(given) },
      });
      await keepSignature(tx, entry, given);
      const erased = await tx.people.member(id);
      if (!erased) throw new Error(`Member ${id} was erased and is not there.`);
      const person = memberView(erased, await tx.people.authorisationsOf(id), now);
      ({ words } = written);
      // The answer is kept, and names the person no longer.
      return { status: 200, body: { person, written: { ...written, words: [] } } };
    });
    const { written } = answer as { written: object };
    return { ...answer, written: { ...written, words }, list: await writtenOutside(this.heads) };
  }

  /** @throws Problem while the person works anywhere, and while any operator has to keep something of the person */
  async erasable(tx: Tx, id: string): Promise<Member> {
    const member = await tx.people.member(id);
    if (!member) throw new Problem('not-found', `Nobody with the id ${id} works or worked here.`);
    refuseWhileBound(await tx.people.bindingOf(id), this.now());
    return member;
  }
}

/** A backup is older than an erasure; the list outside is what brings the erasure back with it. */
export async function writtenOutside(heads: Pick<HeadExport, 'signNow'> | null): Promise<object> {
  if (heads === null) {
    const says =
      'This server writes no list of erasures outside its database (start it with --heads FOLDER): a backup from before this erasure would bring the person back when it is restored.';
    return { written: false, says };
  }
  const written = await heads.signNow().then(
    () => true,
    () => false,
  );
  const says = written
    ? 'The list of erasures outside the database has it; name that folder when an older backup is restored.'
    : 'The list of erasures could not be written outside the database just now; the server tries again at its next round.';
  return { written, says };
}

/** It is kept for ever, so it names the person by the reference that the record has. */
function statementOf({ reference }: Member): string {
  return `I erase the personal data of the person chosen (reference ${reference.slice(0, 16)} in the record): name, licence number, sign-in, passkeys, addresses and the salt of the reference. It cannot be undone. The record and every signature stay, and name nobody.`;
}

/** @throws Problem where words that are kept for ever name the person they are about */
export function refuseNameIn(reason: string, { name, licenceNumber }: Member): void {
  const words = [
    name,
    ...name.split(/\s+/).filter((word) => word.length > 2),
    ...(licenceNumber ? [licenceNumber] : []),
  ];
  const named = words.some((word) => reason.toLowerCase().includes(word.toLowerCase()));
  if (!named) return;
  const why = 'names the person; it is kept for ever, so leave the name out';
  throw new Problem('invalid-input', `The reason ${why}.`, { errors: [{ pointer: '/reason', reason: why }] });
}

function erasedAlready(): Problem {
  return new Problem('not-found', 'The personal data of this person were erased before.');
}
