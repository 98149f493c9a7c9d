import { Injectable } from '@nestjs/common';
import { deadlineOf, type DefectLife, offerExtension, Refusal, signLimits, standing } from '#deferrals';
import { type Leg, presetOf, type RectificationClock } from '#intervals';
import type { AircraftRow, FlightRow, Tx } from '#store';
import { livesOf, type OpenedDefect } from '../defects/defect-book.js';
import { defectNumber } from '../defects/views.js';
import { sayDay, sayInstant } from '../deferrals/say-time.js';
import { DispatchService } from '../dispatch/dispatch.service.js';
import { countedFrom, usedOf } from '../dispatch/flown.js';
import { flownLegs } from '../movements/flown-legs.js';
import type { OperatorSettings } from '../people/operator-settings.js';
import { nameOfNotice } from './preset-of-choice.js';

const FLIGHTS_JUDGED = 5;

/** Something open that reads otherwise under other settings. */
export interface Effect {
  about: 'deadline' | 'use' | 'extension' | 'answer';
  registration: string;
  /** Number of the defect, or of the flight. */
  of: string;
  before: string;
  after: string;
}

/** What a change of settings does to open items and to the answers about the next flights. Nothing is stored. */
@Injectable()
export class EffectsService {
  constructor(private readonly dispatch: DispatchService) {}

  async of(tx: Tx, before: OperatorSettings, after: OperatorSettings, now: string): Promise<Effect[]> {
    const effects: Effect[] = [];
    for (const aircraft of await tx.aircraft.list()) {
      const opened = await livesOf(tx, await tx.defects.open(aircraft.id));
      const deferred = opened.filter(({ life }) => life.deferral !== null);
      if (deferred.length === 0) continue;
      const legs = await flownLegs(tx, aircraft.id, countedFrom(deferred, now));
      for (const one of deferred) {
        const number = defectNumber(aircraft, one.row);
        const say = (settings: OperatorSettings) => wordsOf(one, opened, legs, settings, now);
        effects.push(...differences(aircraft, number, say(before), say(after)));
      }
      effects.push(...(await this.answers(tx, aircraft, opened, before, after, now)));
    }
    return effects;
  }

  private async answers(
    tx: Tx,
    aircraft: AircraftRow,
    opened: readonly OpenedDefect[],
    before: OperatorSettings,
    after: OperatorSettings,
    now: string,
  ): Promise<Effect[]> {
    if (JSON.stringify([before.judge, before.deferral]) === JSON.stringify([after.judge, after.deferral])) return [];
    const effects: Effect[] = [];
    for (const flight of await tx.flights.planned(aircraft.id, now, FLIGHTS_JUDGED)) {
      const words = async (settings: OperatorSettings) =>
        (await this.dispatch.judgeNow(tx, aircraft, flight, settings, { at: now, opened })).words;
      const [was, is] = [await words(before), await words(after)];
      if (was !== is) effects.push(answerEffect(aircraft, flight, was, is));
    }
    return effects;
  }
}

/** How an open item reads under these settings. What was signed is not touched. */
function wordsOf(
  { life }: OpenedDefect,
  opened: readonly OpenedDefect[],
  legs: readonly Leg[],
  settings: OperatorSettings,
  now: string,
): Words {
  const { counting } = settings.deferral;
  const at = Date.parse(now) < Date.parse(life.recordedAt) ? life.enteredAt : now;
  const { left } = standing(life, at, usedOf(life, legs, counting) ?? {}, counting);
  const others = opened.map((one) => one.life).filter((one) => one !== life);
  return {
    signed: life.limits.flatMap(({ clock }) => (clock === null ? [] : [clockWords(clock)])).join('; '),
    deadline: countedAnew(life, others, settings),
    use: left.map(({ sentence }) => sentence).join(' '),
    extension: extensionWords(life, settings, now),
  };
}

interface Words extends Record<'deadline' | 'use' | 'extension', string> {
  /** As signed. */
  signed: string;
}

function differences({ registration }: AircraftRow, of: string, before: Words, after: Words): Effect[] {
  const abouts = ['deadline', 'use', 'extension'] as const;
  return abouts
    .filter((about) => before[about] !== after[about] && !(about === 'deadline' && after.deadline === after.signed))
    .map((about) => {
      if (about !== 'deadline') return { about, registration, of, before: before[about], after: after[about] };
      const anew = `stays as signed; counted anew it would be ${after.deadline}`;
      return { about, registration, of, before: before.signed, after: anew };
    });
}

function answerEffect({ registration }: AircraftRow, flight: FlightRow, before: string, after: string): Effect {
  const of = `${flight.number} on ${sayInstant(flight.offBlockAt)}`;
  return { about: 'answer', registration, of, before, after };
}

/** The interval of the basis as it would be signed under these settings, from the same record. */
function countedAnew(
  life: DefectLife,
  others: readonly DefectLife[],
  { deferral: settings }: OperatorSettings,
): string {
  const { deferral } = life;
  if (deferral === null) return '';
  const limits = signLimits(life, deferral.basis, { settings, others });
  return limits.flatMap(({ clock }) => (clock === null ? [] : [clockWords(clock)])).join('; ');
}

function clockWords(clock: RectificationClock): string {
  const { lastDay, endsAt, base, interval } = clock;
  const end = endsAt === null ? '' : `, before ${sayInstant(endsAt, base)}`;
  const day = lastDay === null ? interval : `last day ${sayDay(lastDay)}`;
  const from = clock.kind === 'counted' ? `, counted from the ${clock.countsFrom.replace('-', ' ')}` : '';
  return `${day}${end}${from}`;
}

function extensionWords(life: DefectLife, { deferral }: OperatorSettings, now: string): string {
  try {
    const { lastDay } = deadlineOf(offerExtension(life, { grantedAt: now }, deferral).limits);
    const { notice } = presetOf(deferral.preset).extension;
    return `may be extended to ${lastDay === null ? 'its new end' : sayDay(lastDay)}, notice: ${nameOfNotice(notice.value)}`;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { code, paragraph }: Refusal = error;
    return `may not be extended: ${REFUSED[code] ?? paragraph}`;
  }
}

const REFUSED: Partial<Record<Refusal['code'], string>> = {
  'no-extension-procedure': 'no approved procedure',
  'category-a-not-extendable': 'category A',
  'category-not-extendable': 'not a category that may be extended',
  'basis-not-extendable': 'its document sets the limit',
  'second-extension': 'it was extended',
  'extension-after-expiry': 'its interval is over',
  'extension-needs-agreement': 'the authority must agree first',
};
