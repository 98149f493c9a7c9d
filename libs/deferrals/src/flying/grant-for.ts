/**
 * Past the deadline a flight may leave only under a document of an authority that covers it: begun and not ended, from
 * off blocks to on blocks, with flights left. Unknown is never yes. 21.A.701; M.A.403(b).
 */
import type { PlannedLeg } from '#intervals';
import type { AuthorityGranted } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { before } from '../instant.js';
import { reason, type Reason } from '../refusal.js';

export interface GrantAnswer {
  covers: boolean;
  document: string;
  because: Reason[];
}

/** The document that covers the flight, else the last one entered with why it does not; null when there is none. */
export function grantFor(
  { grants, defect }: DefectLife,
  flight: PlannedLeg,
  flownUnder: Readonly<Record<string, number>>,
): GrantAnswer | null {
  const answers = grants.map((grant): GrantAnswer => {
    const document = `${grant.document.kind === 'permit' ? 'permit' : 'authority document'} ${grant.document.number}`;
    const gaps = gapsOf(grant, flight, flownUnder);
    const because = gaps.length === 0 ? [] : [reason('grant-does-not-cover', { defect, document, because: gaps })];
    return { covers: gaps.length === 0, document, because };
  });
  return answers.find(({ covers }) => covers) ?? answers.at(-1) ?? null;
}

function gapsOf(
  { from, until, flights, document }: AuthorityGranted,
  { offBlockAt, onBlockAt }: PlannedLeg,
  flownUnder: Readonly<Record<string, number>>,
): string[] {
  const gaps: string[] = [];
  if (before(offBlockAt, from)) gaps.push(`it begins at ${from}`);
  if (onBlockAt === undefined) gaps.push('when the flight ends is not known');
  else if (!before(onBlockAt, until)) gaps.push(`it ends at ${until}`);
  if (flights === null) return gaps;
  const flown = Object.hasOwn(flownUnder, document.number) ? flownUnder[document.number] : undefined;
  if (flown === undefined) gaps.push('how many flights were flown under it is not known');
  else if (flown >= flights) gaps.push(`its ${flights} flights are flown`);
  return gaps;
}
