/** A refusal that names defects by the numbers people know, where the rules knew them by their ids. */
import { type FactValue, Refusal, type RefusalCode, type RefusalFacts } from '#deferrals';
import type { AircraftRow } from '#store';
import type { OpenedDefect } from './defect-book.js';
import { defectNumber } from './views.js';

/** Does the work; a refusal in it is thrown on with numbers in place of ids. */
export async function readably<T>(
  aircraft: Pick<AircraftRow, 'registration'>,
  opened: readonly OpenedDefect[],
  work: () => T | Promise<T>,
): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const numbers = new Map(opened.map(({ row }) => [row.id, defectNumber(aircraft, row)]));
    const refusal: Refusal = error;
    throw new Refusal(refusal.code, named(refusal.facts, numbers) as RefusalFacts<RefusalCode>);
  }
}

function named(facts: Refusal['facts'], numbers: ReadonlyMap<string, string>): Record<string, FactValue> {
  const name = (value: string): string => numbers.get(value) ?? value;
  return Object.fromEntries(
    Object.entries(facts).map(([key, value]) => {
      if (typeof value === 'string') return [key, name(value)];
      return [key, typeof value === 'object' ? value.map(name) : value];
    }),
  );
}
