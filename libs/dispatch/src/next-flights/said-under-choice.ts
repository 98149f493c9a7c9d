/**
 * What one stop says of the rows of a whole choice, with exactly the work done that the choice had done on the way.
 *
 * A row's standing at a stop hangs on nothing of the choice but the records of its own work, and on whether another defect
 * stands under the same row of the entry. So it is kept by these, and most plans of a search find it there.
 */
import { codeOf, type Code } from '../compiled/code.js';
import { closureOf } from '../compiled/closures-of-mel.js';
import { Frame } from '../frame/frame.js';
import { workAnswer } from '../frame/work-state.js';
import { judgeGates } from '../gates.js';
import { allOfPairs } from '../kleene.js';
import type { Option, Said, Standing, Tree, WorkAtom } from '../proposal/problem.js';
import { leavesOf, standing, Standings } from '../proposal/standings.js';
import type { PlanStops } from './plan-stops.js';
import type { OnTheWay } from './on-the-way.js';

export class SaidUnderChoice implements Said {
  /** With every choice that is looked at. */
  readonly mayChange = true;
  /** What the stop says whatever is chosen. */
  readonly #ofAll: Standings;
  readonly #standings = new Map<string, Standing>();
  readonly #gates = new Map<string, Code>();
  /** By number of option, under the choice that is looked at. */
  readonly #current: Standing[] = [];
  #way: OnTheWay | null = null;
  #frame: Frame | null = null;

  constructor(
    readonly plan: PlanStops,
    readonly index: number,
  ) {
    this.#ofAll = new Standings(plan.stops.mel, plan.leaving(index), index > 0);
  }

  look(way: OnTheWay): void {
    this.#way = way;
    this.#frame = null;
    for (const option of way.options) {
      const key = `${option.number} ${way.ownWork(option)}`;
      let known = this.#standings.get(key);
      if (known === undefined) this.#standings.set(key, (known = this.#judge(option)));
      this.#current[option.number] = known;
    }
  }

  standing({ number }: Option): Standing {
    return this.#current[number]!;
  }

  leaves(tree: Tree): Uint8Array {
    return this.#way!.judgementsHangOnRows ? leavesOf(tree, this.#framed()) : this.#ofAll.leaves(tree);
  }

  work({ key, procedure }: WorkAtom, defect: string | null): Code {
    const frame = this.#framed();
    const owed = frame.defects.find(({ id }) => id === defect) ?? null;
    return codeOf(workAnswer(frame, key, procedure, owed));
  }

  gates(): Code {
    const key = this.#way!.asGatesSee;
    let code = this.#gates.get(key);
    if (code === undefined) {
      code = codeOf(allOfPairs(judgeGates(this.#framed()).map(({ answer }) => answer)));
      this.#gates.set(key, code);
    }
    return code;
  }

  #judge(option: Option): Standing {
    const frame = this.#framed();
    const { defect } = option.item;
    const stands = defect === null ? null : frame.defects.find(({ id }) => id === defect.id)!;
    return standing({ ...option.item, defect: stands }, frame);
  }

  #framed(): Frame {
    return (this.#frame ??= new Frame(this.plan.stops.mel, this.#way!.situationAt(this.index), closureOf));
  }
}
