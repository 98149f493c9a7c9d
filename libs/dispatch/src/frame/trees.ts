/**
 * The explained trees of provisos in one frame. Each distinct pair of proviso and facts runs through the engine once;
 * only the facts about entries differ from choice to choice.
 */
import type { Procedure, Proviso, Row } from '#mel';
import { Possible, Unknown, type FactLookup, type FactView } from '../evaluate/marker.js';
import { allOfPairs, TT } from '../kleene.js';
import type { OpenDefect } from '../situation.js';
import type { DownState } from '../units/down-state.js';
import type { ExplainedNode, NowAfter, Truth } from '../verdict.js';
import { compiled } from './compiled-mel.js';
import type { Frame } from './frame.js';
import { personsAnswer } from './judgement-state.js';
import { workAnswer } from './work-state.js';

const OF_FRAME = new WeakMap<Frame, Trees>();

/** The explained tree of one proviso, with the units down as in `state`. */
export function treeOf(frame: Frame, proviso: Proviso, state: DownState): Promise<ExplainedNode> {
  let trees = OF_FRAME.get(frame);
  if (trees === undefined) OF_FRAME.set(frame, (trees = new Trees(frame)));
  return trees.tree(proviso, state);
}

class Trees {
  readonly #frame: Frame;
  readonly #trees = new Map<Proviso, Map<string, Promise<ExplainedNode>>>();
  readonly #views = new Map<string, FactView>();

  constructor(frame: Frame) {
    this.#frame = frame;
  }

  tree(proviso: Proviso, state: DownState): Promise<ExplainedNode> {
    const engine = compiled(this.#frame.mel, proviso);
    const lookup = this.#lookupIn(state);
    const entryFacts = engine.keys.filter((key) => key.startsWith('entry.'));
    const same = entryFacts.map((key) => shown(lookup(key))).join(' ');
    let trees = this.#trees.get(proviso);
    if (trees === undefined) this.#trees.set(proviso, (trees = new Map()));
    let tree = trees.get(same);
    if (tree === undefined) trees.set(same, (tree = engine.judge(lookup)));
    return tree;
  }

  #lookupIn(state: DownState): FactLookup {
    return (key) => (key.startsWith('entry.') ? entryView(state, key) : this.#fixedView(key));
  }

  #fixedView(key: string): FactView {
    if (key.startsWith('flight.') || key.startsWith('aircraft.')) return this.#frame.facts.view(key);
    let view = this.#views.get(key);
    if (view === undefined) this.#views.set(key, (view = this.#personsView(key)));
    return view;
  }

  /** Work and judgements, as conditions of other rows ask for them. */
  #personsView(key: string): FactView {
    const subject = subjectOf(key);
    if (key.startsWith('judgement.')) {
      const answer = personsAnswer(this.#frame, subject, null);
      return { value: answer.now === 'U' ? new Unknown(answer.because) : answer.now === 'T' };
    }
    const users = this.#usersOf(subject);
    const answers = users.map((defect) => workAnswer(this.#frame, subject, this.#procedureOf(subject), defect));
    return { value: possibleOf(allOfPairs(answers)) };
  }

  /** The open defects that owe a piece of work, or nobody in particular. */
  #usersOf(work: string): (OpenDefect | null)[] {
    const [entry, row] = work.split('/');
    const users = this.#frame.situation.defects.filter((defect) => defect.entry === entry && defect.row === row);
    return users.length > 0 ? users : [null];
  }

  #procedureOf(work: string): Procedure | null {
    const [entry = '', row, id] = work.split('/');
    const rows: Row[] = this.#frame.fitted.subEntries(entry).flatMap((subEntry) => subEntry.rows);
    return rows.find((one) => one.id === row)?.procedures?.find((one) => one.id === id) ?? null;
  }
}

function entryView(state: DownState, key: string): FactView {
  const [entry = '', units] = subjectOf(key).split('/');
  const what = key.startsWith('entry.up') ? 'up' : 'notFailed';
  const counts = state.counts(what, units === undefined ? { entry } : { entry, units: units.split('+') });
  const [only] = counts;
  return { value: counts.length === 1 && only !== undefined ? only : new Possible(counts, counts) };
}

function subjectOf(key: string): string {
  return /\[(.*)\]$/.exec(key)?.[1] ?? '';
}

const VALUES: Record<Truth, readonly boolean[]> = { T: [true], F: [false], U: [false, true] };

function possibleOf(pair: NowAfter): true | Possible {
  return pair.now === TT.now && pair.after === TT.after ? true : new Possible(VALUES[pair.now], VALUES[pair.after]);
}

function shown({ value }: FactView): string {
  return value instanceof Possible ? value.now.join(',') : String(value);
}
