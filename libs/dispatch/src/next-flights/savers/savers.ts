/** The smallest changes that would let the first broken flight leave, by number of changes, minutes, and flights kept. */
import { byCode } from '../../units/unit.js';
import type { Saver } from '../next-flights.js';
import { rowChanges } from './change-row.js';
import { earlierWork } from './do-work.js';
import { fixes } from './fix.js';
import { legsLeftOut } from './leave-out.js';
import type { Saving } from './saving.js';
import { personSent } from './send-person.js';
import { severalChanges } from './several.js';

const KINDS = [personSent, earlierWork, rowChanges, fixes, legsLeftOut];

export async function saversOf(saving: Saving): Promise<Saver[]> {
  const found: Saver[] = [];
  for (const kind of KINDS) found.push(...(await kind(saving)));
  found.push(...(await severalChanges(saving, found)));
  return found.sort(
    (a, b) => a.size - b.size || minutesOrMost(a) - minutesOrMost(b) || b.keeps - a.keeps || byCode(a.text, b.text),
  );
}

/** Work without a figure comes after all that has one. */
function minutesOrMost({ minutes }: Saver): number {
  return minutes ?? Number.MAX_SAFE_INTEGER;
}
