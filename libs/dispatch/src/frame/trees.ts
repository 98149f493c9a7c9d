/**
 * The explained trees of provisos in one frame. Each distinct pair of proviso and facts runs through the engine once;
 * only the facts about entries differ from choice to choice.
 */
import type { EntryRef, Procedure, Proviso, Row } from '#mel';
import { Possible, Unknown, type FactLookup, type FactView } from '../evaluate/marker.js';
import { allOfPairs, TT } from '../kleene.js';
import type { OpenDefect } from '../situation.js';
import type { DownState } from '../units/down-state.js';
import type { ExplainedNode, NowAfter, Truth } from '../verdict.js';
import type { Frame } from './frame.js';
import { personsAnswer } from './judgement-state.js';
import { remember } from './remember.js';
import { workAnswer } from './work-state.js';

/** The trees of some provisos with the units down as in one state. */
export type TreeOf = (proviso: Proviso) => ExplainedNode;

const TREES = Symbol('trees');

/** Judges the provisos, so that everything after it can be computed without waiting. */
export async function treesIn(frame: Frame, state: DownState, provisos: readonly Proviso[]): Promise<TreeOf> {
  const trees = frame.once(TREES, () => new Trees(frame));
  const distinct = [...new Set(provisos)];
  const judged = await Promise.all(trees.judge(distinct, state));
  const found = new Map(distinct.map((proviso, at) => [proviso, judged[at]]));
  return (proviso) => {
    const tree = found.get(proviso);
    if (tree === undefined) throw new Error(`"${proviso.text}" was not judged.`);
    return tree;
  };
}

type Judging = ExplainedNode | Promise<ExplainedNode>;

class Trees {
  readonly #frame: Frame;
  readonly #trees = new Map<Proviso, Map<string, Judging>>();
  readonly #views = new Map<string, FactView>();

  constructor(frame: Frame) {
    this.#frame = frame;
  }

  judge(provisos: readonly Proviso[], state: DownState): Judging[] {
    const ofEntries = new Map<string, FactView>();
    const lookup: FactLookup = (key) =>
      key.startsWith('entry.') ? entryView(state, key, ofEntries) : this.#fixedView(key);
    return provisos.map((proviso) => this.#tree(proviso, lookup));
  }

  #tree(proviso: Proviso, lookup: FactLookup): Judging {
    const compiled = this.#frame.compile(this.#frame.mel, proviso);
    const same = compiled.entryKeys.map((key) => shown(lookup(key))).join(' ');
    let trees = this.#trees.get(proviso);
    if (trees === undefined) this.#trees.set(proviso, (trees = new Map()));
    let tree = trees.get(same);
    if (tree === undefined) trees.set(same, (tree = compiled.judge(lookup)));
    return tree;
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

function entryView(state: DownState, key: string, known: Map<string, FactView>): FactView {
  let view = known.get(key);
  if (view === undefined) {
    const { what, ref } = entryAsked(key);
    const counts = state.counts(what, ref);
    const [only] = counts;
    known.set(
      key,
      (view = { value: counts.length === 1 && only !== undefined ? only : new Possible(counts, counts) }),
    );
  }
  return view;
}

/** `entry.up[32-42-01/1+2]` taken apart. */
const entryAsked = remember(
  (key: string) => key,
  (key): { what: 'up' | 'notFailed'; ref: EntryRef } => {
    const [entry = '', units] = subjectOf(key).split('/');
    const what = key.startsWith('entry.up') ? 'up' : 'notFailed';
    return { what, ref: units === undefined ? { entry } : { entry, units: units.split('+') } };
  },
);

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
