/**
 * Where the name of somebody stands in what people wrote: an erasure takes away what the program knows of a person, and
 * nobody's own words. They stand in the record in clear, and so cannot be taken out of it.
 */
import { Inject, Injectable } from '@nestjs/common';
import type { FoundText, Member, Store, Tx } from '#store';
import { defectNumber } from '../defects/views.js';
import { STORE } from '../http/tokens.js';

const MOST = 500;
const SAYS_NONE =
  'Every text was looked through for the whole name, its parts of three letters or more, sign-in name, licence number and mailboxes: they stand in none. Written otherwise it is not found.';
const SAYS =
  'An erasure cannot take these words away: they are part of the record, and every proof over it would break. Read each one: it may mean somebody else. Keep this list with the request, hand out no history of these items without need, and state towards the person why the record has to keep it.';

/** One address, with how many texts there hold the name. */
export interface WrittenPlace {
  /** `Q-KEA/3`, `entry 812`, or what kind of thing it is. */
  name: string;
  /** The page that shows it. */
  page: string;
  texts: number;
}

@Injectable()
export class WrittenNamesService {
  constructor(@Inject(STORE) private readonly store: Store) {}

  async of(tx: Tx, member: Member) {
    const words = await this.wordsOf(tx, member);
    const found = await tx.freeText.mentioning(words, member.personId, MOST);
    const defects = new Map(
      (await tx.defects.getAll([...new Set(found.flatMap(({ defectId }) => defectId ?? []))])).map((row) => [
        row.id,
        row,
      ]),
    );
    const fleet = new Map((await tx.aircraft.list()).map((one) => [one.id, one]));
    const places = new Map<string, WrittenPlace>();
    const inRecord = new Set<string>();
    for (const text of found) {
      const row = text.defectId === null ? undefined : defects.get(text.defectId);
      const aircraft = fleet.get(row?.aircraftId ?? text.aircraftId ?? '');
      const place =
        row && aircraft
          ? { name: defectNumber(aircraft, row), page: `/defects/${row.id}` }
          : aircraft
            ? { name: aircraft.registration, page: `/aircraft/${aircraft.id}` }
            : elsewhere(text);
      const key = `${place.page} ${place.name}`;
      // Tables repeat what the record holds.
      if (text.table === 'record_entry') inRecord.add(key);
      else if (inRecord.has(key)) continue;
      places.set(key, { ...place, texts: (places.get(key)?.texts ?? 0) + 1 });
    }
    const says = found.length === 0 ? SAYS_NONE : SAYS;
    return { places: [...places.values()], more: found.length >= MOST, words, says };
  }

  /** The whole name, and its parts; those of one or two letters stand everywhere. */
  private async wordsOf(tx: Tx, { personId, name, licenceNumber }: Member): Promise<string[]> {
    const credential = await this.store.identity.credentialOf(personId);
    const addresses = (await tx.reminderAddresses.list(personId)).filter((one) => one.personId === personId);
    const mailboxes = addresses.flatMap(({ kind, address }) => (kind === 'email' ? [address] : []));
    const parts = name.split(/\s+/).filter((part) => part !== '');
    const long = parts.filter((part) => part.length > 2);
    const known = [parts.join(' '), ...long, licenceNumber, credential?.signInName, ...mailboxes];
    return [...new Set(known.flatMap((word) => (word === null || word === undefined || word === '' ? [] : [word])))];
  }
}

/** Pages of what belongs to no aircraft. */
const PAGES: Readonly<Record<string, string>> = {
  operator: '/settings',
  station: '/control/stations',
  card_library: '/cards/library',
  movement_message: '/movements',
  movement_delivery: '/movements',
};

function elsewhere({ table, number, what }: FoundText): Pick<WrittenPlace, 'name' | 'page'> {
  if (table === 'record_entry') {
    return {
      name: number === null ? `an entry not numbered yet (${what})` : `entry ${number} (${what})`,
      page: '/record',
    };
  }
  return { name: table.replaceAll('_', ' '), page: PAGES[table] ?? '/record' };
}
