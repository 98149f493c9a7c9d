import { Injectable } from '@nestjs/common';
import { loadCards, type Card, type CardLibraryContent } from '#mel';
import type { DefectRow, Tx } from '#store';
import { MelShelf } from '../mel/mel-shelf.js';

const MOST_SHELVED = 40;

/** Finds work cards: in the MEL that a defect was deferred under, in the one in force, in the library in force. */
@Injectable()
export class CardShelf {
  private readonly loaded = new Map<string, CardLibraryContent>();

  constructor(private readonly mels: MelShelf) {}

  /** The library in force for a type; null when the operator has none. It never changes under its key. */
  async library(tx: Tx, aircraftType: string): Promise<CardLibraryContent | null> {
    const id = await tx.cards.inForce(aircraftType);
    if (id === null) return null;
    const known = this.loaded.get(id);
    if (known) return known;
    const row = await tx.cards.get(id);
    const loaded = loadCards(JSON.parse(row?.content ?? 'null'), `${row?.document} ${row?.revision}`);
    if ('errors' in loaded) throw new Error(`The stored library ${id} does not load.`);
    const oldest = this.loaded.keys().next();
    if (this.loaded.size >= MOST_SHELVED && !oldest.done) this.loaded.delete(oldest.value);
    this.loaded.set(id, loaded.library);
    return loaded.library;
  }

  /** The cards that procedures name, as the MEL read that the defect was deferred under. */
  async ofMel(tx: Tx, row: DefectRow, aircraftType: string): Promise<readonly Card[]> {
    const mel =
      row.melRevisionId === null
        ? (await this.mels.inForce(tx, aircraftType))?.mel
        : await this.mels.ofRevision(tx, row.melRevisionId);
    return mel?.content.cards ?? [];
  }

  /** Every card in force for a type. */
  async inForce(tx: Tx, aircraftType: string): Promise<readonly Card[]> {
    const mel = await this.mels.inForce(tx, aircraftType);
    return [...(mel?.mel.content.cards ?? []), ...((await this.library(tx, aircraftType))?.cards ?? [])];
  }
}
