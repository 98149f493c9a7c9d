import { type LoadedRevisionRow, loadedRevisionTable } from './loaded-revision.js';

/** One revision of an operator's MEL for a type. */
export type MelRevisionRow = LoadedRevisionRow;

export const MelRevisionTable = loadedRevisionTable('mel_revision');
