import { Injectable } from '@nestjs/common';
import { type Act, type GenerallyVerified, inspect, proceed, release, verifyGenerally } from '#deferrals';
import { newId } from '#store';
import { type Calling, type Scene, signed } from './acting.js';
import { ActingService } from './acting.service.js';
import type * as Bodies from './releasing-bodies.js';

/** From the work to the release: gone over, inspected by another, released with what stays open. */
@Injectable()
export class ReleasingService {
  constructor(private readonly acting: ActingService) {}

  verify(calling: Calling, id: string, body: Bodies.VerificationBody): Promise<object> {
    return this.acting.act(calling, id, body.sign, async (scene) => {
      const by = await signed(scene, 'verify', 'sign-procedure', body.sign);
      return verifyGenerally(scene.life, { id: newId(), by, ...seenIn(body) }, scene.context);
    });
  }

  inspect(calling: Calling, id: string, body: Bodies.InspectBody): Promise<object> {
    return this.acting.act(calling, id, body.sign, async (scene) => {
      const { findings, unforeseen } = body;
      const said = unforeseen === undefined ? {} : { unforeseen };
      const by = await signed(scene, 'inspect', 'inspect', body.sign, said);
      return inspect(scene.life, { id: newId(), by, findings, ...said }, scene.context);
    });
  }

  release(calling: Calling, id: string, body: Bodies.ReleaseBody): Promise<object> {
    return this.acting.act(calling, id, body.sign, async (scene) => {
      const { outcome = 'closed', staysOpen = [], asMinorTask = false } = body;
      const more = staysOpen.length > 0 ? { staysOpen: staysOpen.join('; ') } : {};
      const by = await signed(scene, 'release', 'release', body.sign, more);
      const verified = body.verified === undefined ? [] : verifiedBy(scene, body.verified, by);
      const gone: Act[] = verified;
      const life = proceed(scene.life, gone);
      const command = { id: newId(), by, outcome, staysOpen, asMinorTask };
      return [...gone, ...release(life, command, scene.context)];
    });
  }
}

/** The releaser may sign the general verification with the same signature: the page shows both above it. */
function verifiedBy(scene: Scene, body: Bodies.VerifiedBody, by: GenerallyVerified['by']): GenerallyVerified[] {
  return verifyGenerally(scene.life, { id: newId(), by, ...seenIn(body) }, scene.context);
}

function seenIn({ toolsAccounted, panelsClosed, registerChecked, remarks }: Bodies.VerifiedBody) {
  return { toolsAccounted, panelsClosed, registerChecked, ...(remarks === undefined ? {} : { remarks }) };
}
