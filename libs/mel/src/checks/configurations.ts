/**
 * Two sub-entries of one entry may not both be written for the same aircraft: then nobody could say which one relieves.
 *
 * They are told apart when, in types, configurations or serials, both are restricted and have nothing in common.
 */
import type { AppliesTo, MelContent } from '../content.js';
import type { Finding } from '../mel-error.js';

const apart = (left: readonly string[] | undefined, right: readonly string[] | undefined): boolean =>
  left !== undefined && right !== undefined && !left.some((code) => right.includes(code));

const serialsApart = (left: AppliesTo['serials'], right: AppliesTo['serials']): boolean =>
  left !== undefined &&
  right !== undefined &&
  !left.some((one) => right.some((other) => one.from <= other.to && other.from <= one.to));

const toldApart = (left: AppliesTo, right: AppliesTo): boolean =>
  apart(left.types, right.types) ||
  apart(left.configurations, right.configurations) ||
  serialsApart(left.serials, right.serials);

export const configurationFindings = (content: MelContent): Finding[] =>
  content.entries.flatMap((entry, at) =>
    entry.subEntries.flatMap((subEntry, sub) =>
      entry.subEntries
        .slice(0, sub)
        .filter((earlier) => !toldApart(earlier.appliesTo ?? {}, subEntry.appliesTo ?? {}))
        .map((earlier) => ({
          path: ['entries', at, 'subEntries', sub, 'appliesTo'],
          reason: `may apply to the same aircraft as sub-entry "${earlier.id}"`,
        })),
    ),
  );
