/**
 * The same situation judged by both evaluators. The rules engine's answer counts; where the other one says anything else
 * the answer must not be recorded, and both trees are told.
 */
import type { Mel, Proviso } from '#mel';
import type { CompiledProviso } from '../evaluate/compiled-proviso.js';
import { Frame } from '../frame/frame.js';
import { judgeIn } from '../judge.js';
import type { Situation } from '../situation.js';
import type { ConditionAnswer, ItemAnswer, Verdict } from '../verdict.js';
import { closureOf } from './closures-of-mel.js';

/** One condition that got two answers; null where only one of them has it. */
export interface TwoAnswers {
  /** `<entry>/<unit>: <condition id>` */
  where: string;
  engine: ConditionAnswer | null;
  compiled: ConditionAnswer | null;
}

export interface Disagreement {
  engine: Pick<Verdict, 'verdict' | 'lo' | 'hi'>;
  compiled: Pick<Verdict, 'verdict' | 'lo' | 'hi'>;
  conditions: TwoAnswers[];
}

export interface BothAnswers {
  /** The rules engine's. */
  verdict: Verdict;
  /** Null when both say the same, word for word. */
  disagreement: Disagreement | null;
}

/** Makes of a proviso of a MEL what judges it beside the rules engine. */
export type SecondEvaluator = (mel: Mel, proviso: Proviso) => CompiledProviso;

/** `compiled` is the second evaluator; another one is given only by tests. */
export async function judgeBoth(
  mel: Mel,
  situation: Situation,
  compiled: SecondEvaluator = closureOf,
): Promise<BothAnswers> {
  const verdict = await judgeIn(new Frame(mel, situation));
  const second = await judgeIn(new Frame(mel, situation, compiled));
  const same = JSON.stringify(verdict) === JSON.stringify(second);
  return { verdict, disagreement: same ? null : disagreementOf(verdict, second) };
}

function disagreementOf(engine: Verdict, compiled: Verdict): Disagreement {
  const [first, second] = [conditionsOf(engine.items), conditionsOf(compiled.items)];
  const conditions = [...new Set([...first.keys(), ...second.keys()])].map((where) => ({
    where,
    engine: first.get(where) ?? null,
    compiled: second.get(where) ?? null,
  }));
  return {
    engine: boundsOf(engine),
    compiled: boundsOf(compiled),
    conditions: conditions.filter((one) => JSON.stringify(one.engine) !== JSON.stringify(one.compiled)),
  };
}

function boundsOf({ verdict, lo, hi }: Verdict): Pick<Verdict, 'verdict' | 'lo' | 'hi'> {
  return { verdict, lo, hi };
}

function conditionsOf(items: readonly ItemAnswer[]): Map<string, ConditionAnswer> {
  return new Map(
    items.flatMap(({ entry, unit, cause, conditions }) => {
      const owner = cause.kind === 'failed' ? ` (${cause.defect})` : '';
      return conditions.map((one) => [`${entry}/${unit}${owner}: ${one.id}`, one] as const);
    }),
  );
}
