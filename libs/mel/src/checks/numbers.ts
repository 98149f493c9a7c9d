/** Numbers installed and required agree with the units; real days; ranges the right way round. */
import type { MelContent } from '../content.js';
import type { Finding } from '../mel-error.js';
import { rowPlaces, subEntryPlaces } from './places.js';

const rowNumberFindings = (content: MelContent): Finding[] =>
  rowPlaces(content).flatMap(({ subEntry, row, path }) => {
    const installed = subEntry.units.length;
    const findings: Finding[] = [];
    if (row.numberInstalled !== installed) {
      findings.push({
        path: [...path, 'numberInstalled'],
        reason: `${row.numberInstalled} installed, but the sub-entry names ${installed} units`,
      });
    }
    if (row.numberRequired > installed) {
      findings.push({
        path: [...path, 'numberRequired'],
        reason: `${row.numberRequired} required of ${installed} installed`,
      });
    }
    return findings;
  });

const serialFindings = (content: MelContent): Finding[] =>
  subEntryPlaces(content).flatMap(({ subEntry, path }) =>
    (subEntry.appliesTo?.serials ?? []).flatMap(({ from, to }, at) =>
      from > to
        ? [{ path: [...path, 'appliesTo', 'serials', at], reason: `the range from ${from} to ${to} is empty` }]
        : [],
    ),
  );

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

/** Whether YYYY-MM-DD names a day of the calendar. */
export const isDay = (text: string): boolean => {
  const [year = 0, month = 0, day = 0] = text.split('-').map(Number);
  const lengths = [31, isLeap(year) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return day >= 1 && day <= (lengths[month - 1] ?? 0);
};

export const numberFindings = (content: MelContent): Finding[] => [
  ...(isDay(content.effectiveOn)
    ? []
    : [{ path: ['effectiveOn'], reason: `"${content.effectiveOn}" is not a day of the calendar` }]),
  ...serialFindings(content),
  ...rowNumberFindings(content),
];
