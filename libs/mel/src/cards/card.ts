/**
 * The shape of a work card: steps in order, who may do each, what it needs, and an account of everything it alters.
 *
 * A card begins as text that somebody who may write cards takes from the approved manual at one revision. It stands in
 * the MEL file, where an (M) procedure names it, or in a library of its own, for rectification and restoration. Somebody
 * starts it on an aircraft; from then on the work keeps the card as it read that day. Once a newer revision of its manual
 * is recorded, nobody signs it until an authorised person confirmed it against that revision. The manual prevails always.
 */
import type { LeftKind } from '../left-kind.js';

/** What the card was written from. `issuedOn` is the day of that revision, YYYY-MM-DD: by it a newer one is told. */
export interface CardReference {
  manual: string;
  task: string;
  revision: string;
  issuedOn: string;
}

/** What a card is for. Only a card for a procedure stands in a MEL file. */
export type CardPurpose = 'procedure' | 'rectification' | 'restoration' | 'check';

/** Licence categories for certifying staff (66.A.20). */
export type CardLicence = 'A' | 'B1' | 'B2' | 'C';

/**
 * What must be there before the step begins. Tools are issued and returned by an account, equipment is stated by its number
 * when the step is done, a part is fitted by the step, supplies only lie ready, a second person signs for himself.
 */
export interface Need {
  kind: 'tool' | 'part' | 'equipment' | 'supplies' | 'second-person';
  what: string;
  /** Of a tool: the account of the card that issues it before the step and takes it back after. */
  account?: string;
  /** Of a tool or of equipment: until when it is calibrated is stated, and it has not run out at the step. */
  calibrated?: boolean;
  /** Of a second person: a licence of one of these categories. */
  licence?: CardLicence[];
  /** Of a second person: what the authorisation must cover; absent: any on this type. */
  privilege?: 'sign-procedure' | 'inspect' | 'release';
}

/** What is stated when the step is done: which one it was, by the number that stands on it. */
export const statedNeeds = ({ needs = [] }: Pick<CardStep, 'needs'>): Need[] =>
  needs.filter(({ kind, calibrated }) => kind === 'equipment' || (kind === 'tool' && calibrated === true));

export const PAIRS = {
  'open-close': { out: 'open', in: 'closed' },
  'unlatch-latch': { out: 'unlatched', in: 'latched' },
  'pull-reset': { out: 'pulled', in: 'reset' },
  'inhibit-restore': { out: 'inhibited', in: 'restored' },
  'fit-remove': { out: 'fitted', in: 'removed' },
  'remove-refit': { out: 'removed', in: 'refitted' },
  'lock-unlock': { out: 'locked', in: 'unlocked' },
  'cap-connect': { out: 'capped', in: 'connected' },
  'issue-return': { out: 'issued', in: 'returned' },
} as const;

/** Two acts that belong together: the first counts out, the second counts in. */
export type Pair = keyof typeof PAIRS;

/** Something the card alters. One step counts it out and a later one counts it in, unless `over` says otherwise. */
export interface CardAccount {
  id: string;
  pair: Pair;
  what: string;
  where: string;
  /** How many; absent: 1. */
  count?: number;
  /** Stands in the aircraft's register while it is out; absent for what is only counted, such as latches. */
  kind?: LeftKind;
  /** It has a number of its own (collar, streamer, placard, tool) that is entered when it goes out and when it comes in. */
  numbered?: boolean;
  /** How it is undone, for the register. */
  undo?: string;
  /** `stays`: it is still out when the card is signed. `found`: an earlier card left it so, and this one counts it in. */
  over?: 'stays' | 'found';
}

/** A value that is read, and the limits that the card gives for it (inclusive). */
export interface Measure {
  id: string;
  what: string;
  unit: string;
  from?: number;
  to?: number;
}

/** How long something lasts: whole minutes, or what the aircraft itself shows, which is read and entered by a person. */
export type Minutes = { minutes: number } | { shownBy: string; atLeast?: number };

interface StepBase {
  id: string;
  text: string;
  /** Steps that must be done before; absent: the step in front of it. An empty list: at any time. */
  after?: string[];
  /** Who may do it, beyond whoever may sign procedures: a licence of one of these categories. */
  licence?: CardLicence[];
  /** How long it takes, in minutes. */
  takes?: number;
  needs?: Need[];
  cautions?: string[];
}

export type CardStep =
  | (StepBase & { kind: 'do' })
  | (StepBase & { kind: 'verify' })
  | (StepBase & { kind: 'measure'; measure: Measure })
  /** `certified`: the reference of the part's release certificate is entered as well. */
  | (StepBase & { kind: 'renew'; part: string; count?: number; certified?: boolean })
  | (StepBase & { kind: 'wait'; lasts: Minutes })
  | (StepBase & { kind: 'out'; account: string })
  | (StepBase & { kind: 'in'; account: string })
  | (StepBase & { kind: 'inspect'; of: string[] })
  /** A run-up or leak check: it lasts, it gives readings, and afterwards somebody looks. */
  | (StepBase & { kind: 'run'; lasts: Minutes; readings: Measure[]; look: string });

export type StepKind = CardStep['kind'];
export type StepOf<Kind extends StepKind> = Extract<CardStep, { kind: Kind }>;

export interface Card {
  id: string;
  title: string;
  purpose: CardPurpose;
  reference: CardReference;
  /** Entries of the MEL it is offered for. */
  entries?: string[];
  /** For the whole work. */
  cautions?: string[];
  accounts?: CardAccount[];
  steps: CardStep[];
}

/** A library of cards for one aircraft type, beside the MEL. */
export interface CardLibraryContent {
  format: 'proviso-cards/1';
  document: string;
  operator: string;
  aircraftType: string;
  revision: string;
  /** Calendar day, YYYY-MM-DD. */
  effectiveOn: string;
  notice?: string;
  cards: Card[];
}

/** The steps that must be done before this one. */
export function stepsBefore({ steps }: Card, step: CardStep): readonly string[] {
  if (step.after !== undefined) return step.after;
  const previous = steps[steps.indexOf(step) - 1];
  return previous === undefined ? [] : [previous.id];
}

/** The reference as it is cited: "K-AMM 29-11-31 task 4, revision 12". */
export const referenceInWords = ({ manual, task, revision }: CardReference): string =>
  `${manual} ${task}, revision ${revision}`;
