import { createHash } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { errorsOf, libraryWarnings, type MelContent, readMel, sharedCardFindings } from '#mel';
import type { Tx } from '#store';
import { CardShelf } from '../cards/card-shelf.js';
import { openCardsOf, outsideMel } from '../cards/open-cards.js';
import { aircraftOr404 } from '../dispatch/dispatch.service.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { entryHits, entryView } from './entry-view.js';
import { notLoaded } from './load-errors.js';
import { MelShelf } from './mel-shelf.js';

/** Loads revisions and looks up entries for one aircraft. */
@Injectable()
export class MelService {
  constructor(
    private readonly shelf: MelShelf,
    private readonly cards: CardShelf,
    @Inject(CLOCK) private readonly now: Clock,
  ) {}

  async revisions(tx: Tx) {
    return { revisions: (await tx.mel.list()).map(revisionView) };
  }

  /** Checks a file whole; a bad one loads nothing and every error is named. A good one comes into force at once. */
  async load(tx: Tx, session: Session, file: string, text: string) {
    const read = readMel(text, file);
    if ('errors' in read) throw notLoaded(file, read.errors);
    const { content } = read.mel;
    const stored = JSON.stringify(content);
    const now = this.now();
    await this.refuseKnown(tx, content);
    const warnings = await this.heldAgainstCards(tx, content, file);
    const id = await tx.mel.add({
      aircraftType: content.aircraftType,
      document: content.document,
      revision: content.revision,
      effectiveOn: content.effectiveOn,
      content: stored,
      sha256: createHash('sha256').update(stored).digest('hex'),
      loadedBy: session.personId,
      loadedAt: now,
    });
    await tx.mel.putInForce(id);
    const revision = (await tx.mel.list()).find((one) => one.id === id);
    if (!revision) throw new Error(`Revision ${id} was added and is not there.`);
    const { document, sha256, aircraftType } = revision;
    await tx.record.append({
      who: session.personId,
      authorisation: null,
      organisation: null,
      what: 'mel.loaded',
      aircraft: null,
      times: { enteredAt: now },
      payload: { document, revision: revision.revision, aircraftType, sha256, entries: content.entries.length },
    });
    return { revision: revisionView(revision), entries: content.entries.length, warnings };
  }

  /** A revision is loaded once: what was deferred under it must always read the same. */
  private async refuseKnown(tx: Tx, { aircraftType, document, revision }: MelContent): Promise<void> {
    await tx.mel.lock(aircraftType);
    const known = (await tx.mel.list()).some(
      (one) => one.aircraftType === aircraftType && one.document === document && one.revision === revision,
    );
    if (!known) return;
    throw new Problem('revision-known', `${document} revision ${revision} for ${aircraftType} is loaded already.`);
  }

  /** The MEL prevails, so it only tells what it leaves behind; a card that would be read two ways is refused. */
  private async heldAgainstCards(tx: Tx, content: MelContent, file: string): Promise<string[]> {
    const { aircraftType, cards = [] } = content;
    await tx.cards.lock(aircraftType);
    const library = (await this.cards.library(tx, aircraftType))?.cards ?? [];
    const shared = sharedCardFindings(cards, library, 'the library of cards');
    if (shared.length > 0) throw notLoaded(file, errorsOf(file, content, shared));
    const astray = library.length > 0 ? libraryWarnings(library, content).map(({ reason }) => reason) : [];
    return [...astray, ...outsideMel(await openCardsOf(tx, aircraftType), content)];
  }

  async search(tx: Tx, aircraftId: string, query: string) {
    const { mel, aircraft } = await this.forAircraft(tx, aircraftId);
    return entryHits(mel, aircraft, query);
  }

  async entry(tx: Tx, aircraftId: string, number: string) {
    const { mel, aircraft } = await this.forAircraft(tx, aircraftId);
    const entry = mel.entry(number);
    if (!entry) throw new Problem('not-found', `The MEL has no entry ${number}.`);
    return entryView(entry, mel.matchSubEntry(number, aircraft));
  }

  private async forAircraft(tx: Tx, id: string) {
    const aircraft = await aircraftOr404(tx, id);
    const shelved = await this.shelf.inForce(tx, aircraft.type);
    if (!shelved) throw new Problem('not-found', `No MEL is in force for the type ${aircraft.type}.`);
    return { mel: shelved.mel, aircraft };
  }
}

function revisionView(row: Awaited<ReturnType<Tx['mel']['list']>>[number]) {
  const { id, aircraftType, document, revision, effectiveOn, sha256, inForce, loadedAt } = row;
  return { id, aircraftType, document, revision, effectiveOn, sha256, inForce, loadedAt };
}
