import { Inject, Injectable } from '@nestjs/common';
import { compileAll } from '#dispatch';
import { type Entry, loadMel, type Mel, type MelContent } from '#mel';
import type { MelSummary, Tx } from '#store';
import { LOGGER } from '../http/tokens.js';
import type { Logger } from 'pino';

/** A loaded revision, with the row it came from. */
export interface ShelvedMel {
  mel: Mel;
  revision: MelSummary;
}

const MOST_SHELVED = 40;

/** Keeps loaded revisions at hand. A revision never changes, so what was made of it under its id stays right. */
@Injectable()
export class MelShelf {
  private readonly loaded = new Map<string, Mel>();

  constructor(@Inject(LOGGER) private readonly logger: Logger) {}

  /** The revision in force for a type; null when the operator has none. */
  async inForce(tx: Tx, aircraftType: string): Promise<ShelvedMel | null> {
    const revision = await tx.mel.inForce(aircraftType);
    return revision ? { mel: await this.get(tx, revision), revision } : null;
  }

  /** A revision by its key, in force or not: what a defect was deferred under. */
  async ofRevision(tx: Tx, id: string): Promise<Mel | null> {
    const known = this.loaded.get(id);
    if (known) return known;
    const row = await tx.mel.get(id);
    return row ? this.get(tx, row) : null;
  }

  /**
   * The revision in force, with some entries as earlier revisions had them. Where they do not fit together, because such
   * an entry names something that is gone, all of it is read as the revision in force has it.
   * @param kept entries with the key of their revision
   */
  async keeping(tx: Tx, { mel, revision }: ShelvedMel, kept: ReadonlyMap<string, string>): Promise<Mel> {
    const differing: [Entry, string][] = [];
    for (const [number, id] of kept) {
      const before = (await this.ofRevision(tx, id))?.content;
      const entry = before?.entries.find((one) => one.number === number);
      const now = mel.content.entries.find((one) => one.number === number);
      if (before && entry && JSON.stringify(entry) !== JSON.stringify(now)) differing.push([entry, before.revision]);
    }
    if (differing.length === 0) return mel;
    const names = differing.map(([{ number }, of]) => `${number} as in ${of}`).toSorted();
    const key = `${revision.id}: ${names.join(', ')}`;
    const known = this.loaded.get(key);
    if (known) return known;
    const loaded = loadMel(mixed(mel.content, differing, names), key);
    if ('mel' in loaded) return this.shelve(key, loaded.mel);
    this.logger.warn(
      { key, errors: loaded.errors.slice(0, 5) },
      'entries signed earlier do not fit the MEL in force',
    );
    return mel;
  }

  private async get(tx: Tx, revision: MelSummary): Promise<Mel> {
    const known = this.loaded.get(revision.id);
    if (known) return known;
    const row = await tx.mel.get(revision.id);
    const loaded = loadMel(JSON.parse(row?.content ?? 'null'), `${revision.document} ${revision.revision}`);
    if ('errors' in loaded) {
      this.logger.error({ revision: revision.id, errors: loaded.errors.slice(0, 5) }, 'stored MEL does not load');
      throw new Error(`The stored MEL ${revision.document} ${revision.revision} does not load.`);
    }
    return this.shelve(revision.id, loaded.mel);
  }

  private shelve(key: string, mel: Mel): Mel {
    compileAll(mel);
    const oldest = this.loaded.keys().next();
    if (this.loaded.size >= MOST_SHELVED && !oldest.done) this.loaded.delete(oldest.value);
    this.loaded.set(key, mel);
    return mel;
  }
}

function mixed(content: MelContent, kept: readonly [Entry, string][], names: readonly string[]): MelContent {
  const numbers = new Set(kept.map(([{ number }]) => number));
  const others = content.entries.filter(({ number }) => !numbers.has(number));
  return {
    ...content,
    revision: `${content.revision} (${names.join(', ')})`,
    entries: [...others, ...kept.map(([entry]) => entry)],
  };
}
