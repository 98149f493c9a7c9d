import { Inject, Injectable } from '@nestjs/common';
import type { Logger } from 'pino';
import { judgeBoth, type SecondEvaluator, type Situation, type Verdict } from '#dispatch';
import type { Mel } from '#mel';
import { Problem } from '../http/problem.js';
import { LOGGER, SECOND_EVALUATOR } from '../http/tokens.js';

/**
 * The one way of this server to an answer on recorded rows: the rules engine and the compiled conditions both judge. Where
 * they do not say the same, word for word, there is no answer; both trees stand in the log.
 */
@Injectable()
export class BothJudges {
  constructor(
    @Inject(LOGGER) private readonly logger: Logger,
    @Inject(SECOND_EVALUATOR) private readonly second: SecondEvaluator | null,
  ) {}

  /** @throws Problem `judges-disagree`, naming the conditions that got two answers */
  async judge(mel: Mel, situation: Situation): Promise<Verdict> {
    const { verdict, disagreement } = await judgeBoth(mel, situation, this.second ?? undefined);
    if (disagreement === null) return verdict;
    const { registration } = situation.aircraft;
    const flight = situation.flight?.number ?? situation.flight?.id ?? null;
    this.logger.error({ aircraft: registration, flight, mel: verdict.mel, disagreement }, 'the two judges disagree');
    const conditions = disagreement.conditions.map(({ where }) => where);
    throw new Problem(
      'judges-disagree',
      `For ${registration} one says "${disagreement.engine.verdict}", the other "${disagreement.compiled.verdict}"` +
        `${conditions.length === 0 ? '' : `; they differ on ${conditions.join(', ')}`}. Neither is taken.`,
      { conditions },
    );
  }
}
