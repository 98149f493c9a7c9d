import { Temporal } from 'temporal-polyfill';
import type { RectificationClock } from './clock.js';
import { sayLocal } from './explain-time.js';
import { readInstant } from './instant.js';
import type { Preset } from './presets/preset.js';

/** Why an operator may not extend. */
export type ExtensionRefusal =
  | 'category-a'
  | 'no-approved-procedure'
  | 'category-not-extendable'
  | 'already-extended'
  | 'before-record'
  | 'after-expiry'
  | 'longer-than-interval'
  | 'needs-authority-agreement';

/** What the rules look at. */
export interface ExtensionAsked {
  rules: Preset['extension'];
  clock: RectificationClock;
  granted: Temporal.Instant;
  alreadyExtended: number;
  procedureHeld: boolean;
  days: number | undefined;
  agreement: string | undefined;
}

interface ExtensionRule {
  refusal: ExtensionRefusal;
  /** The sentence of the refusal, or null when the rule is kept. */
  refuses: (asked: ExtensionAsked) => string | null;
}

/** In the order in which they are asked; the first that refuses is the answer. */
export const EXTENSION_RULES: readonly ExtensionRule[] = [
  {
    refusal: 'category-a',
    refuses: ({ clock }) =>
      clock.category === 'A'
        ? `Category A (${clock.interval}) is never extended by the operator; only the authority's own document may grant more.`
        : null,
  },
  {
    refusal: 'no-approved-procedure',
    refuses: ({ procedureHeld }) =>
      procedureHeld ? null : 'The operator holds no approved procedure for extensions.',
  },
  {
    refusal: 'category-not-extendable',
    refuses: ({ rules, clock }) =>
      rules.categories.value.some((letter) => letter === clock.category)
        ? null
        : `Category ${clock.category} may not be extended; only ${rules.categories.value.join(', ')}.`,
  },
  {
    refusal: 'already-extended',
    refuses: ({ rules, alreadyExtended }) =>
      rules.times.value !== null && alreadyExtended >= rules.times.value
        ? `The deferral was extended ${alreadyExtended} of ${rules.times.value} times allowed.`
        : null,
  },
  {
    refusal: 'before-record',
    refuses: ({ clock, granted }) =>
      Temporal.Instant.compare(granted, readInstant('recordedAt', clock.recordedAt)) < 0
        ? `Granted ${sayLocal(granted, clock.base)}, before the defect was recorded.`
        : null,
  },
  {
    refusal: 'after-expiry',
    refuses: ({ clock, granted }) => {
      if (clock.endsAt === null) return null;
      const ends = readInstant('endsAt', clock.endsAt);
      return Temporal.Instant.compare(granted, ends) < 0
        ? null
        : `Granted ${sayLocal(granted, clock.base)}, but the interval was over at ${sayLocal(ends, clock.base)}; it must be granted before.`;
    },
  },
  {
    refusal: 'longer-than-interval',
    refuses: ({ clock, days }) =>
      days !== undefined && clock.days !== null && days > clock.days
        ? `${days} days are longer than the interval itself, ${clock.days} days.`
        : null,
  },
  {
    refusal: 'needs-authority-agreement',
    refuses: ({ rules, agreement }) =>
      rules.needsAgreement.value && !agreement?.trim()
        ? 'The authority must have agreed to this extension, and no reference of its agreement is given.'
        : null,
  },
];
