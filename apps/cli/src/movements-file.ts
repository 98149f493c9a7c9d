import { readMovements, type FlownLeg, type ReadMovements, type TrayEntry } from '#movements';
import { readText } from './read-file.js';
import { UsageError } from './usage-error.js';

/** What one aircraft flew, out of a file of movement messages. */
export interface OneAircraft {
  /** Null when the file tells of no leg. */
  registration: string | null;
  legs: FlownLeg[];
  /** What stands in the file and could not be used: more may have been flown. */
  notUsed: { line: number; reason: TrayEntry['reason']; sentence: string }[];
}

/**
 * Reads a file of movement messages. A line `RECEIVED <instant>` says when those after it were received; `receivedAt`
 * speaks for those before the first such line. A file without one message in it is a mistake, not an answer.
 */
export async function movementsFrom(path: string, receivedAt?: string): Promise<ReadMovements> {
  const read = readMovements(await readText(path), receivedAt === undefined ? {} : { receivedAt });
  const [first] = read.tray;
  if (read.messages.length > 0 || read.tray.some(({ reason }) => reason !== 'no-message')) return read;
  throw new UsageError(
    `${path}: ${first ? `line ${first.place.line}: ${first.sentence}` : 'holds no movement message'}`,
  );
}

/** The legs of a file that tells of one aircraft: a deadline is of one. */
export async function movementsOfOne(path: string): Promise<OneAircraft> {
  const { legs, tray } = await movementsFrom(path);
  const registrations = [...new Set(legs.map(({ registration }) => registration))];
  if (registrations.length > 1) {
    throw new UsageError(`${path}: tells of ${registrations.join(', ')}; a deadline counts the legs of one aircraft`);
  }
  return {
    registration: registrations[0] ?? null,
    legs,
    notUsed: tray.map(({ place, reason, sentence }) => ({ line: place.line, reason, sentence })),
  };
}
