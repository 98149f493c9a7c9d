/** The real thing that a random history runs on: the lives of the defects of one aircraft, and everything seen of them. */
import { readInstant, writeInstant } from '#intervals';
import type { Act, LeftItem } from '../acts.js';
import type { BasisContext, RowOffered } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { context, offer, signed } from '../invented.fixture.js';
import type { LicenceCategory, Signature } from '../people.js';
import { proceed } from '../replay.js';
import { DAY, LEAVES_ON_DAY, ROWS, type Model, type RowName, type Who } from './model.fixture.js';

const START = readInstant('start', '2026-01-01T00:00Z');
export const iso = (minute: number): string => writeInstant(START.add({ minutes: minute }));

export interface Seen {
  /** The life after each of its acts, the first after the write-up. */
  lives: DefectLife[];
}

export class RealAircraft {
  readonly seen: Seen[] = [];
  /** How often each kind of act was admitted. */
  readonly admitted = new Map<Act['kind'], number>();
  #count = 0;

  id(): string {
    this.#count += 1;
    return `act-${this.#count}`;
  }

  life(index: number): DefectLife {
    const last = this.seen[index]?.lives.at(-1);
    if (last === undefined) throw new Error(`There is no defect ${index}`);
    return last;
  }

  get lives(): DefectLife[] {
    return this.seen.map((_, index) => this.life(index));
  }

  take(index: number, acts: readonly Act[]): void {
    for (const act of acts) {
      const before = this.seen[index]?.lives ?? [];
      before.push(proceed(this.life(index), [act]));
      this.admitted.set(act.kind, (this.admitted.get(act.kind) ?? 0) + 1);
    }
  }
}

const LICENCES: Record<Who, LicenceCategory[]> = {
  first: ['B1'],
  second: ['B1', 'B2'],
  control: ['B1'],
  mechanic: ['A'],
  trainee: ['B1'],
  leaver: ['B1'],
};

export function sign(who: Who, minute: number): Signature {
  return signed(who, iso(minute), {
    role: who === 'control' ? 'maintenance-control' : 'technician',
    scope: {
      licenceCategories: LICENCES[who],
      ...(who === 'trainee' ? { privileges: [] } : {}),
      ...(who === 'leaver' ? { revokedAt: iso(LEAVES_ON_DAY * DAY) } : {}),
    },
  });
}

function offerOf(name: RowName): RowOffered {
  const { category, days, flights } = ROWS[name];
  return offer({
    id: name,
    category,
    ...(category === 'A' ? { interval: flights === null ? `${days} calendar-days` : `${flights} flights` } : {}),
    numberRequired: name === 'pair' ? 0 : 1,
    ...(name === 'unit 2 only' ? { covers: ['2'] } : {}),
  });
}

export function given(model: Model, real: RealAircraft, index: number, row: RowName | null = null): BasisContext {
  return context(iso(model.minute), {
    offered: row === null ? null : offerOf(row),
    others: real.lives.filter((_, other) => other !== index),
    used: { flights: model.defects[index]?.flights ?? 0 },
  });
}

export const breaker = (id: string): LeftItem => ({
  id,
  kind: 'breaker',
  where: `P11-${id}`,
  tag: id,
  undo: 'push in',
});
