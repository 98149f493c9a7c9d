import { createHash } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { admitSignature, confirms, dayIn, newerRevision } from '#deferrals';
import { type Card, cardsAgainstMel, libraryWarnings, readCards, referenceInWords } from '#mel';
import { newId, type Tx } from '#store';
import { storedPeople } from '../defects/people-in-acts.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { notLoaded } from '../mel/load-errors.js';
import { MelShelf } from '../mel/mel-shelf.js';
import { keepSignature, signedPart } from '../people/kept-signature.js';
import type { Proof } from '../people/proof.js';
import { signatureOf } from '../people/signer.js';
import type * as Bodies from './bodies.js';
import { CardShelf } from './card-shelf.js';
import { confirmedView } from './card-view.js';
import { openCardsOf, outsideLibrary } from './open-cards.js';
import { againstManual, manualRevisions } from './revisions.js';

type LibraryRow = Awaited<ReturnType<Tx['cards']['libraries']>>[number];

interface Confirming {
  session: Session;
  proof: Proof;
}

/** Libraries of cards, the revisions of the manuals they were written from, and their confirmation. */
@Injectable()
export class CardLibraryService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly shelf: CardShelf,
    private readonly mels: MelShelf,
  ) {}

  async list(tx: Tx) {
    const types = [...new Set((await tx.aircraft.list()).map(({ type }) => type))];
    const cards = [];
    for (const aircraftType of types) {
      for (const card of await this.shelf.inForce(tx, aircraftType)) {
        const against = await againstManual(tx, aircraftType, card);
        const { id, title, purpose, reference } = card;
        const line = { aircraftType, card: id, title, purpose, reference: referenceInWords(reference) };
        cards.push({ ...line, newerRevision: against.newerRevision, confirmed: confirmedView(against) });
      }
    }
    const libraries = (await tx.cards.libraries()).map(libraryLine);
    const warnings = [];
    for (const type of types) warnings.push(...(await this.warningsFor(tx, type)));
    return { at: this.now(), libraries, cards, warnings, revisions: await manualRevisions(tx) };
  }

  /** What of the library in force does not fit the MEL in force, whichever was loaded last. */
  private async warningsFor(tx: Tx, aircraftType: string) {
    const mel = await this.mels.inForce(tx, aircraftType);
    const library = await this.shelf.library(tx, aircraftType);
    if (mel === null || library === null) return [];
    return libraryWarnings(library.cards, mel.mel.content).map((one) => ({ aircraftType, ...one }));
  }

  /** A bad file loads nothing and every error is named. A good one comes into force at once. */
  async load(tx: Tx, session: Session, { file, text }: Bodies.CardFileBody) {
    const read = readCards(text, file);
    if ('errors' in read) throw notLoaded(file, read.errors);
    const { aircraftType, document, revision, effectiveOn, cards } = read.library;
    // Always the MEL first, as where an MEL is loaded.
    await tx.mel.lock(aircraftType);
    await tx.cards.lock(aircraftType);
    const mel = await this.mels.inForce(tx, aircraftType);
    const astray = mel ? cardsAgainstMel(read.library, mel.mel.content, file) : [];
    if (astray.length > 0) throw notLoaded(file, astray);
    if (await tx.cards.known(aircraftType, document, revision)) {
      throw new Problem('revision-known', `${document} revision ${revision} for ${aircraftType} is loaded already.`);
    }
    const before = (await this.shelf.library(tx, aircraftType))?.cards ?? [];
    const warnings = [
      ...(mel ? libraryWarnings(cards, mel.mel.content).map(({ reason }) => reason) : []),
      ...dropped(before, cards),
      ...outsideLibrary(await openCardsOf(tx, aircraftType), cards),
    ];
    const content = JSON.stringify(read.library);
    const sha256 = createHash('sha256').update(content).digest('hex');
    const loadedAt = this.now();
    const said = { aircraftType, document, revision, effectiveOn, sha256 };
    await tx.cards.putInForce({ ...said, content, loadedBy: session.personId, loadedAt });
    await recordUnsigned(tx, session, 'cards.loaded', loadedAt, { ...said, cards: cards.length });
    return { document, revision, cards: cards.length, warnings };
  }

  /** From now on no card written from an older revision is signed before it is confirmed. */
  async recordRevision(tx: Tx, session: Session, body: Bodies.ManualRevisionBody) {
    const { manual, task, revision, issuedOn } = body;
    const recordedAt = this.now();
    await notInFuture(tx, issuedOn, recordedAt);
    const known = (await manualRevisions(tx)).some(
      (one) => one.manual === manual && one.task === (task ?? null) && one.revision === revision,
    );
    if (known)
      throw new Problem('revision-known', `Revision ${revision} of ${manual} ${task ?? ''} is recorded already.`);
    const said = { manual, task: task ?? '', revision, issuedOn };
    await tx.cards.recordRevision({ ...said, recordedBy: session.personId, recordedAt });
    await recordUnsigned(tx, session, 'manual.revised', recordedAt, said);
    return { manual, task: task ?? null, revision, issuedOn };
  }

  async statement(tx: Tx, query: Bodies.ConfirmationQuery) {
    const { card } = await this.confirmable(tx, query);
    return {
      act: 'confirm-card',
      statement: confirmationOf(card.title, referenceInWords(card.reference), query.against),
    };
  }

  async confirm(tx: Tx, { session, proof }: Confirming, body: Bodies.ConfirmationBody) {
    const { aircraftType, against, sign } = body;
    const { card, wrote } = await this.confirmable(tx, body);
    await notConfirmedBefore(tx, body, wrote);
    const statement = confirmationOf(card.title, referenceInWords(card.reference), against);
    if (sign.statement !== statement) {
      throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
    }
    const now = this.now();
    const { code } = await tx.operators.current();
    const { personId, roles } = session;
    const privilege = 'confirm-card' as const;
    const who = { operatorCode: code, personId, role: roles[0] ?? ('engineer' as const), aircraftType, privilege };
    const by = await signatureOf(tx, { ...who, statement, now, proof });
    const aircraft = { registration: 'every aircraft of the type', type: aircraftType, operator: code };
    admitSignature(by, privilege, { aircraft, enteredAt: now, act: 'confirm-card' });
    const entry = await tx.record.append({
      who: personId,
      authorisation: by.authorisation.number,
      organisation: by.organisation,
      what: 'card.confirmed',
      aircraft: null,
      times: { enteredAt: now },
      payload: { aircraftType, card: card.id, wrote, against, signature: signedPart(by) },
    });
    await keepSignature(tx, entry, by);
    const kept = { aircraftType, card: card.id, wrote, against, signature: storedPeople({ by }), entryId: entry.id };
    await tx.cards.confirm({ id: newId(), ...kept });
    return { card: card.id, against, confirmed: { by: by.name, at: now } };
  }

  private async confirmable(tx: Tx, { aircraftType, card: id, against }: Bodies.ConfirmationQuery) {
    const card = (await this.shelf.inForce(tx, aircraftType)).find((one) => one.id === id);
    if (!card) throw new Problem('not-found', `There is no work card ${id} for ${aircraftType} here.`);
    const newer = newerRevision(card.reference, await manualRevisions(tx));
    const wrote = card.reference.revision;
    if (newer === null || !confirms({ card: id, wrote, against }, card, newer)) {
      const newest = newer === null ? 'none is newer than the card' : `the newest is ${newer.revision}`;
      throw new Problem('not-found', `Revision ${against} is not what the card is to be held against: ${newest}.`);
    }
    return { card, wrote };
  }
}

/** A year that was mistyped would stand above every revision to come. */
async function notInFuture(tx: Tx, issuedOn: string, at: string): Promise<void> {
  const today = dayIn(at, (await tx.operators.current()).base);
  if (issuedOn <= today) return;
  const reason = `lies in the future: today is ${today}`;
  throw new Problem('invalid-input', `The day it was issued ${reason}.`, {
    errors: [{ pointer: '/issuedOn', reason }],
  });
}

/** One confirmation stands for all: a second signature would say nothing more. */
async function notConfirmedBefore(
  tx: Tx,
  { aircraftType, card, against }: Bodies.ConfirmationBody,
  wrote: string,
): Promise<void> {
  const all = await tx.cards.confirmations(aircraftType);
  const before = all.some((one) => one.card === card && one.wrote === wrote && one.against === against);
  if (before) throw new Problem('confirmed-already', `Card ${card} is confirmed against revision ${against}.`);
}

const dropped = (before: readonly Card[], now: readonly Card[]): string[] =>
  before.flatMap(({ id, title }) =>
    now.some((one) => one.id === id) ? [] : [`"${title}" stood in the library before and is no longer offered`],
  );

function libraryLine({ aircraftType, document, revision, effectiveOn, inForce, loadedAt }: LibraryRow) {
  return { aircraftType, document, revision, effectiveOn, inForce, loadedAt };
}

function confirmationOf(title: string, reference: string, against: string): string {
  return `I held work card "${title}", written from ${reference}, against revision ${against}, and it still says what the manual says.`;
}

async function recordUnsigned(tx: Tx, session: Session, what: string, enteredAt: string, payload: object) {
  await tx.record.append({
    who: session.personId,
    authorisation: null,
    organisation: null,
    what,
    aircraft: null,
    times: { enteredAt },
    payload,
  });
}
