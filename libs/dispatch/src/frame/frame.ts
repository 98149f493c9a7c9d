/**
 * A situation made ready to be judged: everything that no choice of rows can change is looked up once and kept here.
 * It lives as long as one answer is being computed.
 */
import type { CountingSettings, PlannedLeg } from '#intervals';
import type { Mel, Procedure, Proviso, Row } from '#mel';
import { Possible, Unknown, type FactLookup, type FactView } from '../evaluate/marker.js';
import { allOfPairs, TT } from '../kleene.js';
import type { OpenDefect, Situation } from '../situation.js';
import type { DownState } from '../units/down-state.js';
import { Fitted } from '../units/fitted.js';
import { byCode } from '../units/unit.js';
import type { ExplainedNode, NowAfter, Truth } from '../verdict.js';
import { compiled } from './compiled-mel.js';
import { FactBook } from './fact-book.js';
import { personsAnswer } from './judgement-state.js';
import { millisOf } from './moment.js';
import { workAnswer } from './work-state.js';

export class Frame {
  readonly fitted: Fitted;
  readonly facts: FactBook;
  /** In the order of their ids, so that the order in which they were given is no matter. */
  readonly defects: readonly OpenDefect[];
  readonly at: number;
  readonly departsAt: string;
  readonly departs: number;
  readonly leg: PlannedLeg;
  readonly counting: Partial<CountingSettings>;
  readonly #trees = new Map<Proviso, Map<string, Promise<ExplainedNode>>>();
  readonly #views = new Map<string, FactView>();

  constructor(
    readonly mel: Mel,
    readonly situation: Situation,
  ) {
    const { aircraft, at, flight, settings } = situation;
    this.fitted = new Fitted(mel, aircraft);
    this.facts = new FactBook(situation);
    this.defects = [...situation.defects].sort((a, b) => byCode(a.id, b.id));
    this.at = millisOf('at', at);
    this.departsAt = flight?.offBlockAt ?? at;
    this.departs = millisOf('flight.offBlockAt', this.departsAt);
    this.leg = {
      offBlockAt: this.departsAt,
      ...(flight?.onBlockAt === undefined ? {} : { onBlockAt: flight.onBlockAt }),
      ...(flight?.flightMinutes === undefined ? {} : { flightMinutes: flight.flightMinutes }),
      ...(flight?.blockMinutes === undefined ? {} : { blockMinutes: flight.blockMinutes }),
    };
    this.counting = { ...settings.counting, expiryInFlight: settings.expiryInFlight };
  }

  /** The explained tree of one proviso. Each distinct pair of proviso and facts runs through the engine once. */
  tree(proviso: Proviso, state: DownState): Promise<ExplainedNode> {
    const engine = compiled(this.mel, proviso);
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
    if (key.startsWith('flight.') || key.startsWith('aircraft.')) return this.facts.view(key);
    let view = this.#views.get(key);
    if (view === undefined) this.#views.set(key, (view = this.#personsView(key)));
    return view;
  }

  /** Work and judgements, as conditions of other rows ask for them. */
  #personsView(key: string): FactView {
    const subject = subjectOf(key);
    if (key.startsWith('judgement.')) {
      const answer = personsAnswer(this, subject, null);
      return { value: answer.now === 'U' ? new Unknown(answer.because) : answer.now === 'T' };
    }
    const users = this.#usersOf(subject);
    const answers = users.map((defect) => workAnswer(this, subject, this.#procedureOf(subject), defect));
    return { value: possibleOf(allOfPairs(answers)) };
  }

  /** The open defects that owe a piece of work, or nobody in particular. */
  #usersOf(work: string): (OpenDefect | null)[] {
    const [entry, row] = work.split('/');
    const users = this.situation.defects.filter((defect) => defect.entry === entry && defect.row === row);
    return users.length > 0 ? users : [null];
  }

  #procedureOf(work: string): Procedure | null {
    const [entry = '', row, id] = work.split('/');
    const rows: Row[] = this.fitted.subEntries(entry).flatMap((subEntry) => subEntry.rows);
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
