import { Injectable } from '@nestjs/common';
import { correct } from '#deferrals';
import { newId } from '#store';
import { type Calling, signed } from './acting.js';
import { ActingService } from './acting.service.js';
import type { CorrectBody } from './correct-body.js';
import { correctionAsked } from './correction-words.js';

/** A mistyped write-up, put right by an act of its own. What it moves stands in the statement that is signed. */
@Injectable()
export class CorrectingService {
  constructor(private readonly acting: ActingService) {}

  correct(calling: Calling, id: string, { field, now, reason, sign }: CorrectBody): Promise<object> {
    return this.acting.act(calling, id, sign, async (scene) => {
      const { life, settings, context } = scene;
      const correction = correctionAsked(life, { field, now }, settings);
      const by = await signed(scene, 'correct', 'write-up', sign, { correction });
      const act = life.acts[0]?.id ?? '';
      return correct(life, { id: newId(), by, act, field, was: life[field], now, reason }, context);
    });
  }
}
