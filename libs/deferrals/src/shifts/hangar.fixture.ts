/**
 * One aircraft in a random shift, twice: as the lib keeps it, and as a naive account does, which knows of each physical
 * thing only who needs it. The two share no code.
 */
import type { Act, DocumentOwner, LeftItem } from '../acts.js';
import type { LeftElsewhere } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { aircraftGates, type Gates, type RegisterEntry } from '../flying/aircraft-gates.js';
import { context, identifiedAs, writtenUp } from '../invented.fixture.js';
import type { RegisterAct } from '../register/acts.js';
import { EMPTY_REGISTER, type RegisterLife } from '../register/register-life.js';
import { replayRegister } from '../register/replay-register.js';
import { proceed } from '../replay.js';
import { iso } from './crew.fixture.js';

/** A thing on the aircraft, and the names of who needs it: defects, or one document. Nobody: an orphan. */
export interface Physical {
  item: LeftItem;
  needs: Set<string>;
}

export class Hangar {
  now = 0;
  lives: DefectLife[] = [];
  register: RegisterLife = EMPTY_REGISTER;
  /** The naive account. */
  readonly things = new Map<string, Physical>();
  /** Until when each document is good, in minutes; null without an end. */
  readonly documents = new Map<string, number | null>();
  /** Defects whose life has ended, as the account saw it. */
  readonly ended = new Set<string>();
  admitted = 0;
  releases = 0;
  #count = 0;

  id(): string {
    this.#count += 1;
    return `s${this.#count}`;
  }

  writeUp(): void {
    const number = this.lives.length;
    const written = writtenUp(iso(this.now), { defect: `D${number}`, id: this.id() });
    this.lives.push(identifiedAs(written, [number % 2 === 0 ? '1' : '2']));
  }

  elsewhere(but: string): LeftElsewhere[] {
    return [
      ...this.lives
        .filter(({ defect, closed }) => defect !== but && closed === null)
        .flatMap(({ defect, left }) => left.map((item) => ({ item, owner: { kind: 'defect' as const, defect } }))),
      ...this.register.things.filter(() => but !== 'register'),
    ];
  }

  given(but: string) {
    const others = this.lives.filter(({ defect }) => defect !== but);
    return context(iso(this.now), { elsewhere: this.elsewhere(but), others });
  }

  write(index: number, acts: readonly Act[]): void {
    this.lives[index] = proceed(this.life(index), acts);
    this.admitted += acts.length;
  }

  enter(acts: readonly RegisterAct[]): void {
    this.register = replayRegister(acts, this.register);
    this.admitted += acts.length;
  }

  life(index: number): DefectLife {
    const life = this.lives[index];
    if (life === undefined) throw new Error(`There is no defect ${index}.`);
    return life;
  }

  /** The list that dispatch reads, as a store would keep it. */
  lines(): RegisterEntry[] {
    return [
      ...this.lives.flatMap(({ defect, left }) =>
        left.map((item) => ({ ...item, owner: { kind: 'defect' as const, defect }, undone: false })),
      ),
      ...this.register.things.map(({ item, owner }) => ({ ...item, owner, undone: false })),
    ];
  }

  gates(): Gates {
    return aircraftGates(this.lives, this.lines(), [], iso(this.now));
  }

  /** By the naive account: things on the aircraft that nobody needs now. */
  orphans(): string[] {
    const needed = (name: string): boolean => {
      if (!this.documents.has(name)) return !this.ended.has(name);
      const until = this.documents.get(name) ?? null;
      return until === null || this.now < until;
    };
    return [...this.things.values()].flatMap(({ item, needs }) => ([...needs].some(needed) ? [] : [item.id]));
  }
}

export const nameOf = ({ kind, reference }: DocumentOwner): string => `${kind} ${reference}`;
