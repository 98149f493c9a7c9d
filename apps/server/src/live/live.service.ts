import { Inject, Injectable, type MessageEvent, type BeforeApplicationShutdown } from '@nestjs/common';
import type { Logger } from 'pino';
import { Observable, type Subscriber } from 'rxjs';
import type { Change, Store } from '#store';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock, LOGGER, STORE } from '../http/tokens.js';
import { OperatorChanges } from './operator-changes.js';

const MOST_MISSED = 1000;
const MOST_STREAMS = 10;
const LOOK_AGAIN_MS = 5000;

/**
 * Tells pages that something was done, by the numbers of the record: nothing can ever appear behind a number already
 * given, so whoever comes back with the last number that he saw misses nothing. It tells which aircraft and what kind of
 * act; what it was is read under the reader's own rights.
 */
@Injectable()
export class LiveService implements BeforeApplicationShutdown {
  private readonly operators = new Map<string, OperatorChanges>();
  private readonly open = new Map<string, Set<Subscriber<MessageEvent>>>();

  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(LOGGER) private readonly logger: Logger,
  ) {}

  /** @param seen the number seen last; null begins with what is sealed from now on */
  follow(session: Session, seen: number | null): Observable<MessageEvent> {
    const own = this.open.get(session.sessionId) ?? new Set();
    if (own.size >= MOST_STREAMS) {
      throw new Problem(
        'too-many-requests',
        `This session follows ${MOST_STREAMS} times already; close a page first.`,
      );
    }
    this.open.set(session.sessionId, own);
    return new Observable<MessageEvent>((subscriber) => {
      own.add(subscriber);
      const stop = this.tell(session, seen, subscriber);
      const looking = setInterval(() => void this.lookAgain(session, subscriber), LOOK_AGAIN_MS).unref();
      return () => {
        clearInterval(looking);
        stop();
        own.delete(subscriber);
        if (own.size === 0) this.open.delete(session.sessionId);
      };
    });
  }

  beforeApplicationShutdown(): void {
    for (const subscribers of this.open.values()) for (const one of subscribers) one.complete();
  }

  /** What was missed first; what is sealed meanwhile waits until that is told. */
  private tell({ operatorId }: Session, seen: number | null, subscriber: Subscriber<MessageEvent>): () => void {
    const changes = this.changesOf(operatorId);
    let last = seen ?? 0;
    let waiting: Change[] | null = [];
    const give = (found: readonly Change[]): void => {
      for (const change of found) {
        if (change.number <= last) continue;
        last = change.number;
        subscriber.next({ id: String(change.number), type: 'change', data: change });
      }
    };
    const stop = changes.listen((found) => (waiting === null ? give(found) : waiting.push(...found)));
    void this.catchUp(changes, seen)
      .then(({ from, missed, behind }) => {
        last = from;
        subscriber.next({ id: String(from), type: behind ? 'behind' : 'from', data: { number: from } });
        give(missed);
        const meanwhile = waiting ?? [];
        waiting = null;
        give(meanwhile);
      })
      .catch((error: unknown) => subscriber.error(error));
    return stop;
  }

  /** One who missed too much is told to read everything again, and goes on from now. */
  private async catchUp(changes: OperatorChanges, seen: number | null) {
    const newest = await changes.newest();
    if (seen === null || seen > newest) return { from: newest, missed: [], behind: seen !== null };
    const missed = await changes.after(seen, MOST_MISSED + 1);
    return missed.length > MOST_MISSED
      ? { from: newest, missed: [], behind: true }
      : { from: seen, missed, behind: false };
  }

  /** Whoever signed out, left or lost his roles is told nothing more. */
  private async lookAgain(session: Session, subscriber: Subscriber<MessageEvent>): Promise<void> {
    try {
      const found = await this.store.identity.session(session.tokenHash, this.now());
      const stays = found?.operatorId === session.operatorId && found.roles.length > 0;
      if (stays) subscriber.next({ type: 'still-here', data: {} });
      else subscriber.complete();
    } catch (error) {
      this.logger.error({ error }, 'The live stream could not look whether its session still stands.');
      subscriber.complete();
    }
  }

  private changesOf(operatorId: string): OperatorChanges {
    const known = this.operators.get(operatorId);
    if (known) return known;
    const made = new OperatorChanges(this.store, operatorId, (error) =>
      this.logger.error({ error }, 'The live stream could not look for what is new.'),
    );
    this.operators.set(operatorId, made);
    return made;
  }
}
