import { Temporal } from 'temporal-polyfill';
import { minutesBetween, startOfDay } from './calendar-day.js';
import { sayEnd } from './calendar-window.js';
import type { CalendarClock, RectificationClock } from './clock.js';
import { sayDay, sayLocal } from './explain-time.js';
import { EXTENSION_RULES, type ExtensionRefusal } from './extension-rules.js';
import { readInstant, writeInstant } from './instant.js';
import { IntervalInputError } from './interval-input-error.js';
import { noticeDue } from './notice-due.js';
import type { Preset, PresetName } from './presets/preset.js';
import { presetOf } from './presets/presets.js';
import { checkWholeNumbers } from './whole-numbers.js';

/** What an extension is judged by. Who grants it, why, and with which plan is for the caller to demand and record. */
export interface ExtensionInput {
  preset: PresetName | Preset;
  /** The clock as it stands; one that was extended before carries its moved end. */
  window: RectificationClock;
  /** The instant at which it is granted, with `Z` or an offset. */
  grantedAt: string;
  /** How often this deferral was extended before. */
  alreadyExtended: number;
  /** Whether the operator holds an approved procedure for extensions; without one nothing is extended. */
  procedureHeld: boolean;
  /** Calendar days to add; default the longest allowed, the interval of the operator's own list. */
  days?: number;
  /** Reference of the authority's agreement, where the preset needs one. */
  authorityAgreement?: string;
  /** Days, YYYY-MM-DD, that are no working days; matters where the notice is due after working days. */
  holidays?: readonly string[];
}

/** A granted extension. Its end replaces that of the interval; nothing else moves. */
export interface Extension {
  days: number;
  grantedAt: string;
  lastDay: string;
  /** Exclusive. */
  endsAt: string;
  /** When the authority must have been told; null where nothing is to be told. End of a working day is exclusive. */
  noticeDueAt: string | null;
  noticeDueOn: string | null;
  paragraph: string;
  explanation: string;
  /** The clock with its new end, as mayDepart, whatIsLeft and a further extend take it. */
  window: CalendarClock;
}

export interface ExtensionRefused {
  refused: ExtensionRefusal;
  because: string;
  paragraph: string;
}

export type ExtensionAnswer = Extension | ExtensionRefused;

/**
 * Extends an interval from its old deadline, or says why not: only under an approved procedure, granted before the end,
 * as often and as long as the preset allows, never category A.
 *
 * C recorded 26 Jan, last day 5 Feb, granted 5 Feb 23:30Z -> last day 15 Feb; granted 6 Feb 00:10Z -> `after-expiry`.
 *
 * Sources stand beside each value of the preset. Throws IntervalInputError only for input that cannot be read.
 */
export function extend(input: ExtensionInput): ExtensionAnswer {
  const rules = presetOf(input.preset).extension;
  const granted = readInstant('grantedAt', input.grantedAt);
  checkWholeNumbers('extension', input, ['alreadyExtended', 'days']);
  if (input.alreadyExtended === undefined) {
    throw new IntervalInputError(
      'extension.alreadyExtended',
      undefined,
      'is not known, and a second extension must be seen.',
    );
  }
  if (input.days === 0) throw new IntervalInputError('extension.days', 0, 'adds nothing.');
  const { window: clock, alreadyExtended, procedureHeld, days, authorityAgreement: agreement } = input;
  const asked = { rules, clock, granted, alreadyExtended, procedureHeld, days, agreement };
  for (const { refusal, refuses } of EXTENSION_RULES) {
    const because = refuses(asked);
    if (because !== null) return { refused: refusal, because, paragraph: rules.paragraph };
  }
  if (clock.kind !== 'calendar')
    throw new Error('a clock that is not of calendar days passed the rules of extension');
  return granting(clock, days ?? clock.days, granted, rules, input.holidays ?? []);
}

function granting(
  clock: CalendarClock,
  days: number,
  granted: Temporal.Instant,
  rules: Preset['extension'],
  holidays: readonly string[],
): Extension {
  const lastDay = Temporal.PlainDate.from(clock.lastDay).add({ days });
  const ends = startOfDay(lastDay.add({ days: 1 }), clock.base);
  const notice = rules.notice.value ? noticeDue(granted, rules.notice.value, clock.base, holidays) : null;
  const lengthMinutes = minutesBetween(readInstant('startsAt', clock.startsAt), ends);
  const steps = [
    `extended on ${sayLocal(granted, clock.base)} by ${days} days from the old last day, ${sayDay(Temporal.PlainDate.from(clock.lastDay))}`,
    sayEnd(ends, clock.base),
  ];
  const explanation = `${steps.join(', ')}.`;
  const moved = { lastDay: lastDay.toString(), endsAt: writeInstant(ends) };
  return {
    days,
    grantedAt: writeInstant(granted),
    ...moved,
    noticeDueAt: notice ? writeInstant(notice.dueAt) : null,
    noticeDueOn: notice ? notice.dueOn.toString() : null,
    paragraph: rules.paragraph,
    explanation,
    window: {
      ...clock,
      ...moved,
      lengthMinutes,
      lengthHours: lengthMinutes / 60,
      explanation: `${clock.explanation} Then ${explanation}`,
    },
  };
}
