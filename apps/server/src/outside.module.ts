import { type DynamicModule, Global, Module } from '@nestjs/common';
import type { Logger } from 'pino';
import type { SecondEvaluator } from '#dispatch';
import { startOfDayHere, type StartOfDayIn } from '#intervals';
import type { HeadExport, Store } from '#store';
import {
  CLOCK,
  type Clock,
  HEADS,
  LOGGER,
  SECOND_EVALUATOR,
  START_OF_DAY,
  STORE,
  TZDB,
  WATCH,
} from './http/tokens.js';
import { SIGN_ON, type SignOnSettings } from './people/sign-on.service.js';
import { PUBLIC_URL } from './people/site-address.js';
import type { WatchOptions } from './watch/reminders/watch-options.js';

/** What every feature may ask for. Nothing in the server reads a clock, the environment or a file by itself. */
export interface Outside {
  store: Store;
  logger: Logger;
  now: Clock;
  /** Version of the time-zone data, which every computed deadline carries. */
  tzdb: string;
  /** That data itself; another than this machine's is given only by tests. */
  startOfDayIn?: StartOfDayIn;
  /** What it needs to do something by itself; absent: it answers and does nothing else. */
  watch?: WatchOptions | null;
  /** What judges beside the rules engine; another one than its own is given only by tests. */
  secondEvaluator?: SecondEvaluator;
  /** Signs the heads of the record; absent or null where none are signed. */
  heads?: Pick<HeadExport, 'signNow'> | null;
  /** Where people open the pages; absent: as each request is addressed. */
  publicUrl?: string | null;
  /** A sign-on of somebody else that people may come in by; absent: the accounts kept here alone. */
  signOn?: SignOnSettings | null;
}

@Global()
@Module({})
export class OutsideModule {
  static with(outside: Outside): DynamicModule {
    const providers = [
      { provide: STORE, useValue: outside.store },
      { provide: LOGGER, useValue: outside.logger },
      { provide: CLOCK, useValue: outside.now },
      { provide: TZDB, useValue: outside.tzdb },
      { provide: START_OF_DAY, useValue: outside.startOfDayIn ?? startOfDayHere },
      { provide: WATCH, useValue: outside.watch ?? null },
      { provide: PUBLIC_URL, useValue: outside.publicUrl ?? null },
      { provide: SIGN_ON, useValue: outside.signOn ?? null },
      { provide: SECOND_EVALUATOR, useValue: outside.secondEvaluator ?? null },
      { provide: HEADS, useValue: outside.heads ?? null },
    ];
    return { module: OutsideModule, providers, exports: providers };
  }
}
