/** Movement messages MVT, MVA and DIV to events, legs and usage counters. Pure. */
export { CountingLegs, countersOf, type MovementCounters, type UsageCounters } from './counters.js';
export type { Delay, MovementElement, TimeGroup, TimePair } from './elements/element.js';
export type { MovementEvent } from './events.js';
export type { FlownLeg, LegEnding } from './flown-leg.js';
export type { LegTime } from './leg-times.js';
export type { MovementMessage, Place, TrayEntry, TrayReason } from './message.js';
export { readMovementsInParts, type MovementsPart } from './read-in-parts.js';
export { readMovements, type ReadMovements, type ReadOptions } from './read-movements.js';
export { readingSettings, type ReadingSettings } from './settings.js';
export type { Transmission } from './transmissions.js';
