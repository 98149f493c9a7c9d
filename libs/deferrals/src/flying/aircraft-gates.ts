/**
 * What keeps the whole aircraft on the ground, whatever its rows say: a write-up without an answer, work opened since the
 * last release, and anything left altered that nobody owns. 14 CFR 121.563; 145.A.48; 145.A.50(a).
 */
import type { LeftItem, Owner } from '../acts.js';
import { before } from '../instant.js';
import { openCards } from '../cards/no-card-open.js';
import { FIELD_WORDS } from '../correcting/field-words.js';
import type { DefectLife } from '../defect-life.js';
import { thingsInWords } from '../leaving/left-items.js';

/** A line of the aircraft's register of what is left altered on it, and who owns it. */
export interface RegisterEntry extends LeftItem {
  owner: Owner | null;
  undone: boolean;
}

/** Work on the aircraft that belongs to no write-up. */
export interface WorkOrder {
  id: string;
  description: string;
  released: boolean;
}

/** The lists that dispatch reads; each must be empty for the aircraft to fly. */
export interface Gates {
  unanswered: string[];
  openWork: string[];
  orphans: string[];
}

/**
 * `lives`: every defect of the aircraft that is not closed, and those that own something in the register.
 * `at`: the instant asked about, ISO 8601 with offset; what is left under a document that is over by then is an orphan.
 */
export function aircraftGates(
  lives: readonly DefectLife[],
  register: readonly RegisterEntry[],
  openWork: readonly WorkOrder[],
  at: string,
): Gates {
  const open = lives.filter(({ closed }) => closed === null);
  return {
    unanswered: open.filter(({ deferral, work }) => deferral === null && work === null).map(inWords),
    openWork: [
      ...open.filter(({ work }) => work !== null).map(inWords),
      ...open
        .filter(({ work }) => work === null)
        .flatMap((life) => openCards(life).map((card) => `${inWords(life)} (work card not signed: ${card})`)),
      ...open.flatMap((life) => decidingCorrections(life).map((what) => `${inWords(life)} (${what})`)),
      ...openWork.filter(({ released }) => !released).map(({ id, description }) => `${id}: ${description}`),
      ...toolsOut(lives, register),
    ],
    orphans: thingsOf([
      ...register.filter((entry) => !entry.undone && !isOwned(entry, open, at)),
      ...lives.flatMap(({ closed, left }) => (closed === null ? [] : left)),
    ]),
  };
}

/** Somebody says that what decides reads wrong, and nobody has looked yet: until then the aircraft is not known to be so. */
function decidingCorrections({ asked }: DefectLife): string[] {
  const waiting = asked.filter(({ item }) => item === null);
  return waiting.map(({ field }) => `a correction waits for a second look: ${FIELD_WORDS[field]}`);
}

/** A defect owns what its history says is left under it, and only while it is open. */
function isOwned({ id, owner }: RegisterEntry, open: readonly DefectLife[], at: string): boolean {
  if (owner === null) return false;
  if (owner.kind !== 'defect') {
    return owner.reference.trim() !== '' && (owner.until === null || before(at, owner.until));
  }
  return open.some(({ defect, left }) => defect === owner.defect && left.some((item) => item.id === id));
}

/** A tool that was issued and is not returned flies with nobody, whoever it was issued for. */
function toolsOut(lives: readonly DefectLife[], register: readonly RegisterEntry[]): string[] {
  const items = [...register.filter(({ undone }) => !undone), ...lives.flatMap(({ left }) => left)];
  return thingsOf(items.filter(({ kind }) => kind === 'tool')).map((tool) => `not returned: ${tool}`);
}

function thingsOf(items: readonly LeftItem[]): string[] {
  const byId = new Map(items.map((item) => [item.id, item]));
  return byId.size === 0 ? [] : thingsInWords([...byId.values()]);
}

function inWords({ defect, description }: DefectLife): string {
  return `${defect}: ${description.length > 80 ? `${description.slice(0, 80)}...` : description}`;
}
