import { Inject, Injectable } from '@nestjs/common';
import { compileAll } from '#dispatch';
import { loadMel, type Mel } from '#mel';
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

  private async get(tx: Tx, revision: MelSummary): Promise<Mel> {
    const known = this.loaded.get(revision.id);
    if (known) return known;
    const row = await tx.mel.get(revision.id);
    const loaded = loadMel(JSON.parse(row?.content ?? 'null'), `${revision.document} ${revision.revision}`);
    if ('errors' in loaded) {
      this.logger.error({ revision: revision.id, errors: loaded.errors.slice(0, 5) }, 'stored MEL does not load');
      throw new Error(`The stored MEL ${revision.document} ${revision.revision} does not load.`);
    }
    compileAll(loaded.mel);
    const oldest = this.loaded.keys().next();
    if (this.loaded.size >= MOST_SHELVED && !oldest.done) this.loaded.delete(oldest.value);
    this.loaded.set(revision.id, loaded.mel);
    return loaded.mel;
  }
}
