/**
 * A situation made ready to be judged: everything that no choice of rows can change is looked up once and kept here.
 * It lives as long as one answer is being computed.
 */
import type { CountingSettings, PlannedLeg } from '#intervals';
import type { Mel } from '#mel';
import type { OpenDefect, Situation } from '../situation.js';
import { Fitted } from '../units/fitted.js';
import { byCode } from '../units/unit.js';
import { FactBook } from './fact-book.js';
import { millisOf } from './moment.js';

export class Frame {
  readonly fitted: Fitted;
  readonly facts: FactBook;
  /** In the order of their ids, so that the order in which they were given is no matter. */
  readonly defects: readonly OpenDefect[];
  readonly at: number;
  readonly departsAt: string;
  readonly departs: number;
  readonly leg: PlannedLeg;
  readonly counting: Partial<CountingSettings>;

  constructor(
    readonly mel: Mel,
    readonly situation: Situation,
  ) {
    const { aircraft, at, flight, settings } = situation;
    this.fitted = new Fitted(mel, aircraft);
    this.facts = new FactBook(situation);
    this.defects = [...situation.defects].sort((a, b) => byCode(a.id, b.id));
    this.at = millisOf('at', at);
    this.departsAt = flight?.offBlockAt ?? at;
    this.departs = millisOf('flight.offBlockAt', this.departsAt);
    this.leg = {
      offBlockAt: this.departsAt,
      ...(flight?.onBlockAt === undefined ? {} : { onBlockAt: flight.onBlockAt }),
      ...(flight?.flightMinutes === undefined ? {} : { flightMinutes: flight.flightMinutes }),
      ...(flight?.blockMinutes === undefined ? {} : { blockMinutes: flight.blockMinutes }),
    };
    this.counting = { ...settings.counting, expiryInFlight: settings.expiryInFlight };
  }
}
