import { Injectable } from '@nestjs/common';
import {
  askCorrection,
  correct,
  lookAndCorrect,
  privilegeOfCorrection,
  privilegeToLeaveIt,
  stayAsWritten,
} from '#deferrals';
import { newId } from '#store';
import { type Calling, type Scene, signed } from '../defects/acting.js';
import { ActingService, type Decide } from '../defects/acting.service.js';
import type { CorrectBody, LookBody, StayBody } from './bodies.js';
import { keepExtensionsRight } from './extension-corrected.js';
import { CorrectionAsked, type Corrects } from './correction-asked.js';

/**
 * Something mistyped, put right by an act of its own. What it moves stands in the statement that is signed; what decides
 * something waits until a second person has looked and signed.
 */
@Injectable()
export class CorrectingService {
  constructor(
    private readonly acting: ActingService,
    private readonly asked: CorrectionAsked,
  ) {}

  correct(calling: Calling, id: string, { reason, sign, ...points }: CorrectBody): Promise<object> {
    return this.acting.act(calling, id, sign, async (scene) => {
      const { life, context } = scene;
      const { words: correction, secondLook, given, ...said } = await this.asked.prepare(seenIn(scene), points);
      const first = { correction, ofWriteUp: said.act === life.acts[0]?.id, waits: secondLook };
      const by = await signed(scene, 'correct', privilegeOfCorrection(life, said), sign, first);
      const command = { id: newId(), by, ...said, reason };
      if (!secondLook) return correct(life, command, context);
      return askCorrection(life, { ...command, ...given }, context);
    });
  }

  look(calling: Calling, id: string, { asked, sign }: LookBody): Promise<object> {
    const decide: Decide = async (scene) => {
      const { life, context } = scene;
      const { words: correction, given } = await this.asked.waiting(seenIn(scene), asked);
      const secondLook = await signed(scene, 'second-look', 'inspect', sign, { correction });
      return lookAndCorrect(life, { id: newId(), asked, secondLook, ...given }, context);
    };
    return this.acting.act(calling, id, sign, decide, keepExtensionsRight);
  }

  stay(calling: Calling, id: string, { asked, reason, sign }: StayBody): Promise<object> {
    return this.acting.act(calling, id, sign, async (scene) => {
      const { life, context, session, settings } = scene;
      const said = this.asked.staying(life, asked, session.personId, settings);
      const privilege = privilegeToLeaveIt(life, asked, session.personId);
      const by = await signed(scene, 'stays-as-written', privilege, sign, said);
      return stayAsWritten(life, { id: newId(), by, asked, reason }, context);
    });
  }
}

function seenIn(scene: Scene): Corrects {
  return { ...scene, at: scene.context.now };
}
