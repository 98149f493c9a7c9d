import type { MovementElement } from './elements/element.js';

/** Where something stood in what was received: counted from 1. */
export interface Place {
  /** Which of several transmissions; 1 when a single text was read. */
  transmission: number;
  line: number;
}

/**
 * One movement message as it was read (IATA AHM 780 for MVT and MVA, AHM 781 for DIV).
 *
 * It is sent from a station about one leg of one flight, often more than once, in any order, and now and then wrong: a
 * later one with COR replaces it. It is read once, kept verbatim, and never changed; what the aircraft did is worked out
 * anew from all of them whenever another one comes in.
 */
export interface MovementMessage {
  type: 'MVT' | 'MVA' | 'DIV';
  /** True for COR: it replaces what was said before about the same movement. */
  correction: boolean;
  /** Airline and number without leading zeros, with the operational suffix: `ZZ0122A` is `ZZ122A`. */
  flight: string;
  /** The scheduled UTC day of departure, found from the two digits of the message and its receipt. */
  scheduledOn: string;
  /** Letters and digits only, so that a hyphen sent by an aircraft does not make another aircraft. */
  registration: string;
  /** Departure airport for AD, ED, NI, EO, RR, FR; arrival airport for AA, EA, EB; for DIV the airport first meant. */
  station: string;
  elements: MovementElement[];
  /** The free text after SI, which swallows the rest. */
  information: string | null;
  /** Lines with an identifier we do not know, verbatim. */
  unknownLines: string[];
  warnings: string[];
  text: string;
  receivedAt: string;
  place: Place;
}

/** Something received that could not be used, waiting for a person. Nothing is dropped without one of these. */
export interface TrayEntry {
  reason: TrayReason;
  /** A whole sentence naming the value and what is wrong with it. */
  sentence: string;
  place: Place;
  /** What was received, verbatim but for control characters. */
  text: string;
  receivedAt: string | null;
}

export type TrayReason =
  /** Text that does not begin with MVT, MVA or DIV. */
  | 'no-message'
  /** The second line is no flight, day, registration and station. */
  | 'flight-line'
  /** The day of the flight lies outside the days round the receipt. */
  | 'day'
  /** An element with a known identifier that does not read. */
  | 'element'
  /** No element says anything about a movement. */
  | 'nothing-reported'
  /** The receipt is unknown, so no day can be found. */
  | 'receipt'
  /** Times that cannot stand in the order they would have to. */
  | 'order'
  /** A movement reported before it happened. */
  | 'future'
  /** An arrival or a return without the departure before it. */
  | 'no-departure'
  /** A departure whose arrival was never reported though the aircraft departed again. */
  | 'no-arrival'
  /** Two messages contradict each other and neither is a correction. */
  | 'conflict'
  /** More messages for one flight and day than any flight has. */
  | 'too-many';
