/**
 * A situation made ready to be judged: everything that no choice of rows can change is looked up once and kept here.
 * It lives as long as one answer is being computed.
 */
import type { CountingSettings, PlannedLeg } from '#intervals';
import type { Mel, Proviso } from '#mel';
import type { CompiledProviso } from '../evaluate/compiled-proviso.js';
import type { Directive, OpenDefect, Situation, WorkState } from '../situation.js';
import { Fitted } from '../units/fitted.js';
import { byCode } from '../units/unit.js';
import { compiled } from './compiled-mel.js';
import { FactBook } from './fact-book.js';
import { millisOf } from './moment.js';

export class Frame {
  readonly fitted: Fitted;
  readonly facts: FactBook;
  /** These in an order of their own, so that the order in which they were given is no matter. */
  readonly defects: readonly OpenDefect[];
  readonly #work = new Map<string, WorkState[]>();
  readonly directives: readonly Directive[];
  readonly #kept = new Map<symbol, unknown>();
  readonly at: number;
  readonly departsAt: string;
  readonly departs: number;
  readonly leg: PlannedLeg;
  readonly counting: Partial<CountingSettings>;

  constructor(
    readonly mel: Mel,
    readonly situation: Situation,
    /** The evaluator of provisos: the rules engine, unless a search brings one of its own. */
    readonly compile: (mel: Mel, proviso: Proviso) => CompiledProviso = compiled,
  ) {
    const { aircraft, at, flight, settings } = situation;
    this.fitted = new Fitted(mel, aircraft);
    this.facts = new FactBook(situation);
    this.defects = [...situation.defects].sort((a, b) => byCode(a.id, b.id));
    for (const record of situation.work) {
      const same = this.#work.get(record.work);
      if (same === undefined) this.#work.set(record.work, [record]);
      else same.push(record);
    }
    for (const same of this.#work.values()) same.sort((a, b) => byCode(orderOf(a), orderOf(b)));
    this.directives = [...situation.directives].sort((a, b) => byCode(a.number, b.number));
    this.at = millisOf('at', at);
    this.departsAt = flight?.offBlockAt ?? at;
    this.departs = millisOf('flight.offBlockAt', this.departsAt);
    this.leg = {
      offBlockAt: this.departsAt,
      ...(flight?.onBlockAt === undefined ? {} : { onBlockAt: flight.onBlockAt }),
      ...(flight?.flightMinutes === undefined ? {} : { flightMinutes: flight.flightMinutes }),
      ...(flight?.blockMinutes === undefined ? {} : { blockMinutes: flight.blockMinutes }),
      ...(flight === null ? {} : { from: flight.from }),
    };
    this.counting = { ...settings.counting, expiryInFlight: settings.expiryInFlight };
  }

  /** The records of one piece of work, the latest last. */
  workOf(key: string): readonly WorkState[] {
    return this.#work.get(key) ?? NO_WORK;
  }

  /** Something that is made once for this frame and dies with it. */
  once<T>(what: symbol, make: () => T): T {
    const kept = this.#kept.get(what);
    if (kept !== undefined) return kept as T;
    const made = make();
    this.#kept.set(what, made);
    return made;
  }
}

const NO_WORK: readonly WorkState[] = [];

/** What may differ between two records of the same work, the latest last. */
function orderOf({ doneAt, defect, forFlight, by, validUntil, possible, because }: WorkState): string {
  return [doneAt, defect, forFlight, by, validUntil, String(possible), because].map((part) => part ?? '').join('\n');
}
