import { Inject, Injectable } from '@nestjs/common';
import type { MovementFileRow, Store, Tx } from '#store';
import { Problem } from '../../http/problem.js';
import { CLOCK, type Clock, STORE } from '../../http/tokens.js';
import { DELIVERY_BYTES } from '../bodies.js';
import { IntakeService } from '../intake.service.js';
import { type ReadMessage, readDelivery } from '../reading.js';

/** A file as it lay in the folder, whole. */
export interface MovementFile {
  name: string;
  /** Of its bytes, as 64 hex digits. */
  sha256: string;
  bytes: Buffer;
  /** When it was written. */
  receivedAt: string;
  /** Code of the operator whose folder it lay in; null where it lay in the common one. */
  operator: string | null;
}

/** What became of a file. Messages that wait in the tray of movements are no reason to refuse a file: they are kept. */
export type FileTaken = { kept: true; sameAs: string | null } | { kept: false; because: string };

export const LARGEST_FILE_BYTES = DELIVERY_BYTES;

/**
 * Takes files of movement messages in. The same content is taken once for an operator, also when two servers see the file
 * at the same moment, and what became of it is kept with it.
 */
@Injectable()
export class FileIntakeService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly intake: IntakeService,
  ) {}

  async take(file: MovementFile): Promise<FileTaken> {
    const text = textIn(file.bytes);
    if (text === null) return { kept: false, because: 'It is no text in UTF-8.' };
    const operator = await this.operatorOf(file, text);
    if ('because' in operator) return { kept: false, because: operator.because };
    return this.store.withOperator(operator.id, null, (tx) => this.takeFor(tx, file, text));
  }

  private async takeFor(tx: Tx, { name, sha256, bytes, receivedAt }: MovementFile, text: string): Promise<FileTaken> {
    await tx.movements.takeIntake();
    const known = await tx.movements.fileOf(sha256);
    if (known) return asBefore(known, name);
    const row = { sha256, name, bytes: bytes.length, takenAt: this.now() };
    const at = receivedAt < row.takenAt ? receivedAt : row.takenAt;
    const messages = await this.messagesIn(tx, text, at);
    if (typeof messages === 'string') {
      await tx.movements.addFile({ ...row, refusedBecause: messages });
      return { kept: false, because: messages };
    }
    const delivery = { text, receivedAt: at, cameBy: 'file' as const, mends: null };
    const { deliveryId } = await this.intake.receive(tx, { personId: null }, delivery, messages);
    await tx.movements.addFile({ ...row, deliveryId });
    return { kept: true, sameAs: null };
  }

  /** Or why the text as a whole is of no use. */
  private async messagesIn(tx: Tx, text: string, receivedAt: string): Promise<ReadMessage[] | string> {
    const reading = await this.intake.reading(tx);
    try {
      return this.intake.read(text, receivedAt, reading);
    } catch (error) {
      if (error instanceof Problem) return error.message;
      throw error;
    }
  }

  /** Of the folder it lay in, else the one operator whose aircraft are named in it. */
  private async operatorOf({ operator, receivedAt }: MovementFile, text: string) {
    const served = await this.store.operatorsServed();
    const [only] = served;
    if (operator !== null) {
      const found = served.find(({ code }) => code === operator);
      return found ?? { because: `There is no operator ${operator} here.` };
    }
    if (served.length === 1 && only) return only;
    const named = [];
    for (const one of served) {
      const flies = await this.store.withOperator(one.id, null, (tx) => this.fliesAny(tx, text, receivedAt));
      if (flies) named.push(one);
    }
    const [found] = named;
    if (named.length === 1 && found) return found;
    const whose = named.length === 0 ? 'no operator here' : named.map(({ code }) => code).join(' and ');
    return { because: `It names aircraft of ${whose}. Put it into the folder of its operator.` };
  }

  private async fliesAny(tx: Tx, text: string, receivedAt: string): Promise<boolean> {
    const read = readDelivery(text, receivedAt, await this.intake.reading(tx));
    const marks = [...new Set(read.flatMap(({ said }) => said?.registration ?? []))];
    return marks.length > 0 && (await tx.aircraft.withMarks(marks)).length > 0;
  }
}

function asBefore({ refusedBecause, name, takenAt }: MovementFileRow, now: string): FileTaken {
  if (refusedBecause !== null) return { kept: false, because: refusedBecause };
  return { kept: true, sameAs: name === now ? null : `${name}, taken ${takenAt}` };
}

/** U+0000 is in no message, and the database keeps none. */
function textIn(bytes: Buffer): string | null {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return text.includes('\u0000') ? null : text;
  } catch {
    return null;
  }
}
