import { Body, Controller, HttpCode, Inject, Post } from '@nestjs/common';
import { ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { admitSignature, type Signature } from '#deferrals';
import type { Store } from '#store';
import { DispatchService } from '../dispatch/dispatch.service.js';
import { type Called, Calling } from '../http/called.js';
import { once } from '../http/once.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { keepSignature } from '../people/kept-signature.js';
import { SignInService } from '../people/sign-in.service.js';
import { type Scene, sceneOf, signed } from './acting.js';
import { DeferBody } from './bodies.js';
import { knownPeople } from './defect-book.js';
import { type ConcurredTo, concurredTo } from './concurred-to.js';
import { basisWords, statedBasis } from './deferral-check.js';
import { recordedPeople, storedPeople } from './people-in-acts.js';
import { readably } from './readable-refusal.js';
import { signerOf } from './views.js';

/**
 * A second person concurs to a deferral before it is signed, where the operator asks for that (common practice, no
 * source). It changes nothing of the defect: it is good for the defect as it was read, on the basis named, and no longer.
 */
@ApiTags('acts')
@Controller('api/defects/:id/concurrence')
export class ConcurrenceController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly dispatch: DispatchService,
    private readonly signIn: SignInService,
  ) {}

  @Post()
  @HttpCode(200)
  @ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' })
  @ApiHeader({ name: 'If-Match', required: true, description: 'ETag of the defect as it was read.' })
  @ApiOkResponse({ schema: ref('SignedBy') })
  @ApiOperation({ summary: 'Concur to a deferral, or to a change of its row, before it is signed.' })
  async concur(@Calling() calling: Called, @Body() body: DeferBody): Promise<object> {
    const { session, request, reply, id } = calling;
    const proof = await this.signIn.proveAgain(session, body.sign, request);
    return once(this.store, session, request, reply, async (tx) => {
      const scene = await sceneOf(tx, { ...calling, proof }, id, () => this.dispatch.settings(tx), this.now);
      const basis = basisWords(body, scene.life);
      const by = await readably(scene.aircraft, scene.opened, async () => {
        const signature = await signed(scene, 'concur', 'concur', body.sign, statedBasis(body, scene.life));
        const { aircraft } = scene.life;
        admitSignature(signature, 'concur', { aircraft, enteredAt: scene.context.now, act: 'concurrence' });
        return signature;
      });
      await write(scene, { basis, asked: concurredTo(body, scene.life) }, by);
      return { status: 200, body: signerOf(by) };
    });
  }
}

interface Concurred {
  basis: string;
  asked: ConcurredTo;
}

async function write(scene: Scene, { basis, asked }: Concurred, by: Signature): Promise<void> {
  const { tx, aircraft, row, context } = scene;
  const people = await knownPeople(tx, [by]);
  const entry = await tx.record.append({
    who: by.person,
    authorisation: by.authorisation.number,
    organisation: by.organisation,
    what: 'deferral.concurred',
    aircraft: { id: aircraft.id, registration: aircraft.registration },
    times: { enteredAt: context.now },
    payload: { number: row.number, basis, asked, signature: recordedPeople(by, people) },
  });
  await keepSignature(tx, entry, by);
  await tx.concurrences.add({
    defectId: row.id,
    defectVersion: row.version,
    basis,
    asked,
    personId: by.person,
    signature: storedPeople(by),
    givenAt: context.now,
    entryId: entry.id,
  });
}
