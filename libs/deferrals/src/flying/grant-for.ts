/**
 * Past the deadline a flight may leave only under a document of an authority that covers it: begun and not ended, from
 * off blocks to on blocks, of a kind it allows, with flights left. Unknown is never yes. 21.A.701; M.A.403(b).
 */
import type { PlannedLeg } from '#intervals';
import type { AuthorityGranted } from '../acts.js';
import { before } from '../instant.js';
import { reason, type Reason } from '../refusal.js';

/** What a document of an authority says about flights. */
export type GrantTerms = Pick<
  AuthorityGranted,
  'document' | 'limit' | 'from' | 'until' | 'flights' | 'kindsOfFlight'
>;

export interface GrantAnswer {
  /** `unknown`: it would cover the flight if what is not known turned out well. */
  answer: 'covers' | 'unknown' | 'does-not-cover';
  /** "permit PF-12". */
  document: string;
  terms: GrantTerms;
  because: Reason[];
  /** What is in the way: what does not fit, or else what is not known. */
  gaps: string[];
  /** True when nothing but the kind of the flight is in the way, and that is not known. */
  asksKind: boolean;
}

/** A flight as a document of an authority looks at it. */
export interface FlightUnderGrant extends PlannedLeg {
  /** "ferry", "passenger"; absent when it is not known. */
  kind?: string;
}

/** The document that covers the flight, else one that perhaps does, else the last one entered; null when there is none. */
export function grantFor(
  { grants, defect }: { grants: readonly GrantTerms[]; defect: string },
  flight: FlightUnderGrant,
  flownUnder: Readonly<Record<string, number>>,
): GrantAnswer | null {
  const answers = grants.map((terms): GrantAnswer => {
    const document = documentName(terms);
    const gaps = gapsOf(terms, flight, flownUnder);
    const known = gaps.filter(({ unknown }) => !unknown);
    const words = (known.length === 0 ? gaps : known).map(({ because }) => because);
    return {
      answer: gaps.length === 0 ? 'covers' : known.length === 0 ? 'unknown' : 'does-not-cover',
      document,
      terms,
      because: gaps.length === 0 ? [] : [reason('grant-does-not-cover', { defect, document, because: words })],
      gaps: words,
      asksKind: known.length === 0 && gaps.length === 1 && gaps[0]?.about === 'kind',
    };
  });
  const byAnswer = (wanted: GrantAnswer['answer']) => answers.find(({ answer }) => answer === wanted);
  return byAnswer('covers') ?? byAnswer('unknown') ?? answers.at(-1) ?? null;
}

function documentName({ document }: GrantTerms): string {
  return `${document.kind === 'permit' ? 'permit' : 'authority document'} ${document.number}`;
}

interface Gap {
  because: string;
  unknown: boolean;
  about: 'time' | 'kind' | 'number';
}

function gapsOf(terms: GrantTerms, flight: FlightUnderGrant, flownUnder: Readonly<Record<string, number>>): Gap[] {
  return [...timeGaps(terms, flight), ...kindGaps(terms, flight), ...numberGaps(terms, flownUnder)];
}

function timeGaps({ from, until }: GrantTerms, { offBlockAt, onBlockAt }: FlightUnderGrant): Gap[] {
  const gap = (because: string, unknown = false): Gap => ({ because, unknown, about: 'time' });
  const early = before(offBlockAt, from) ? [gap(`it begins at ${from}`)] : [];
  if (!before(offBlockAt, until)) return [...early, gap(`it ends at ${until}`)];
  if (onBlockAt === undefined) return [...early, gap('when the flight ends is not known', true)];
  return before(onBlockAt, until) ? early : [...early, gap(`it ends at ${until}`)];
}

function kindGaps({ kindsOfFlight }: GrantTerms, { kind }: FlightUnderGrant): Gap[] {
  if (kindsOfFlight === null) return [];
  const gap = (because: string, unknown = false): Gap => ({ because, unknown, about: 'kind' });
  if (kind === undefined) return [gap('what kind of flight it is, is not known', true)];
  return kindsOfFlight.includes(kind) ? [] : [gap(`it is for a ${kindsOfFlight.join(' or ')} flight`)];
}

function numberGaps({ flights, document }: GrantTerms, flownUnder: Readonly<Record<string, number>>): Gap[] {
  if (flights === null) return [];
  const gap = (because: string, unknown = false): Gap => ({ because, unknown, about: 'number' });
  const flown = Object.hasOwn(flownUnder, document.number) ? flownUnder[document.number] : undefined;
  if (flown === undefined) return [gap('how many flights were flown under it is not known', true)];
  return flown < flights ? [] : [gap(flights === 1 ? 'its one flight is used' : `its ${flights} flights are used`)];
}
