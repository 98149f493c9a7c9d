/** Which unit failed, and which configuration is fitted: questions about what a defect is of. */
import type { Group, JudgedChoice } from '../choice.js';
import type { Item } from '../conditions/item.js';
import { byCode } from '../units/unit.js';
import type { OpenFact } from './open-fact.js';

export const unitQuestion = (defect: string): string => `defect.unit[${defect}]`;
export const configurationQuestion = (entry: string): string => `aircraft.configuration[${entry}]`;

/** Each once, though several choices have it. */
export function openReadings(choices: readonly JudgedChoice[]): OpenFact[] {
  const found = new Map<string, OpenFact>();
  for (const group of choices.flatMap(({ groups }) => groups)) {
    for (const fact of [...unitsOf(group), ...configurationOf(group)]) found.set(fact.key, fact);
  }
  return [...found.values()];
}

function unitsOf({ items }: Group): OpenFact[] {
  const [first] = items;
  const units = distinct(items.map(({ item }) => item.unit));
  if (units.length < 2 || first?.item.defect == null) return [];
  return [
    {
      key: unitQuestion(first.item.defect.id),
      question: `Which of ${first.answer.title} failed: ${units.join(' or ')}?`,
      mayAnswer: ['technician', 'maintenance-control'],
      cells: units,
      neededBy: conditionsOf(items.map(({ item }) => item)),
      aboutUnits: true,
    },
  ];
}

function configurationOf({ items }: Group): OpenFact[] {
  const [first] = items;
  if (first === undefined || first.item.entry === null || first.item.configurationKnown) return [];
  const codes = distinct(items.flatMap(({ item }) => item.subEntry?.id ?? []));
  const which = codes.length === 0 ? '' : ` (${codes.join(' or ')})`;
  return [
    {
      key: configurationQuestion(first.item.entry.number),
      question: `Which configuration of ${first.answer.title} is fitted${which}?`,
      mayAnswer: ['engineer', 'administrator'],
      cells: codes.length === 0 ? [true] : codes,
      neededBy: conditionsOf(items.map(({ item }) => item)),
      aboutUnits: true,
    },
  ];
}

function conditionsOf(items: readonly Item[]): string[] {
  return distinct(items.map(({ entry, row, unit }) => `${entry?.number ?? ''}/${row?.id ?? unit}`)).sort(byCode);
}

function distinct(values: readonly string[]): string[] {
  return [...new Set(values)];
}
