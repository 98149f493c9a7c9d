/** Names under which the outside things are handed to the features. */
export const STORE = Symbol('store');
export const LOGGER = Symbol('logger');
export const CLOCK = Symbol('clock');
export const TZDB = Symbol('tzdb');
/** The first instant of a day in a zone, by the time-zone data of this server. */
export const START_OF_DAY = Symbol('start of day');
/** What the server does by itself; null: nothing. */
export const WATCH = Symbol('watch');
/** Null: the one that ships with the reasoner. */
export const SECOND_EVALUATOR = Symbol('second evaluator');
export const HEADS = Symbol('heads');

/** The instant now, ISO 8601 UTC. Handed in, so that a test can stand on a certain day. */
export type Clock = () => string;
