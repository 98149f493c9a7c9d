import { Inject, Injectable } from '@nestjs/common';
import { underZoneData, zoneDifferences } from '#deferrals';
import type { StartOfDayIn } from '#intervals';
import { newId, type AircraftRow, type Store, type Tx } from '#store';
import { changeColumns, livesOf } from '../defects/defect-book.js';
import { defectNumber } from '../defects/views.js';
import { CLOCK, type Clock, START_OF_DAY, STORE, TZDB } from '../http/tokens.js';

/** What a look at the open deadlines of one operator found. */
export interface Looked {
  operator: string;
  tzdb: string;
  /** The version that deadlines are stored with, where it is newer: then nothing is computed here. */
  newer: string | null;
  /** How many open deadlines were counted again; 0 where another server, or an earlier start, did. */
  counted: number;
  differences: number;
}

/**
 * Counts every open deadline again when this server has newer time-zone data than the last that looked. What comes out
 * otherwise is listed, and the stricter of both ends counts until a person confirms. One server of several does it.
 */
@Injectable()
export class LookingService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(TZDB) private readonly tzdb: string,
    @Inject(START_OF_DAY) private readonly startOfDayIn: StartOfDayIn,
  ) {}

  async lookAtAll(): Promise<Looked[]> {
    const looked: Looked[] = [];
    for (const { id, code } of await this.store.operatorsServed()) {
      looked.push(await this.store.withOperator(id, null, (tx) => this.look(tx, code)));
    }
    return looked;
  }

  private async look(tx: Tx, operator: string): Promise<Looked> {
    const newest = await tx.zoneData.lockNewest();
    const { tzdb } = this;
    const nothing = { operator, tzdb, newer: null, counted: 0, differences: 0 };
    if (newest !== null && newest > tzdb) return { ...nothing, newer: newest };
    if (newest === tzdb) return nothing;
    const found = { counted: 0, differences: 0 };
    const listed: object[] = [];
    for (const aircraft of await tx.aircraft.list()) {
      const { counted, differences } = await this.lookAtAircraft(tx, aircraft, listed);
      found.counted += counted;
      found.differences += differences;
    }
    await tx.zoneData.setNewest(tzdb);
    await tx.record.append({
      who: null,
      authorisation: null,
      organisation: null,
      what: 'zone-data.counted-again',
      aircraft: null,
      times: { enteredAt: this.now() },
      payload: { tzdb, before: newest, counted: found.counted, differences: listed },
    });
    return { ...nothing, ...found };
  }

  private async lookAtAircraft(tx: Tx, aircraft: AircraftRow, listed: object[]) {
    await tx.aircraft.lock(aircraft.id);
    const opened = await livesOf(tx, await tx.defects.open(aircraft.id));
    let [counted, differences] = [0, 0];
    for (const { row, life } of opened) {
      counted += life.limits.filter(({ clock }) => clock?.endsAt != null).length;
      const found = zoneDifferences(life, this.tzdb, this.startOfDayIn);
      if (found.length === 0) continue;
      differences += found.length;
      for (const { confirmed: _, ...one } of found) {
        await tx.zoneData.add({ id: newId(), defectId: row.id, ...one, foundAt: this.now() });
        listed.push({ defect: row.id, number: defectNumber(aircraft, row), ...one });
      }
      await changeColumns(tx, row, underZoneData(life, found));
    }
    return { counted, differences };
  }
}
