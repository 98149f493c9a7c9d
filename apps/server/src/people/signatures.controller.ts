import { Controller, Get, Inject, Param } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Store } from '#store';
import { ID } from '../http/id.pipe.js';
import { Problem } from '../http/problem.js';
import { CurrentSession, type Session } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { signatureViews } from './signature-views.js';

const MOST_LISTED = 100;

@ApiTags('people')
@Controller('api/signatures')
export class SignaturesController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Everything that stands signed in your own name here, the newest first.' })
  @ApiOkResponse({ schema: ref('Signatures') })
  own(@CurrentSession() { operatorId, personId }: Session): Promise<object> {
    return this.store.withOperator(operatorId, personId, async (tx) => ({
      at: this.now(),
      signatures: await signatureViews(tx, await tx.signatures.ofPerson(personId, MOST_LISTED)),
    }));
  }

  @Get(':id')
  @ApiOperation({ summary: 'One signature, verified against the bytes of its record entry.' })
  @ApiOkResponse({ schema: ref('SignatureView') })
  one(@CurrentSession() { operatorId, personId }: Session, @Param('id', ID) id: string): Promise<object> {
    return this.store.withOperator(operatorId, personId, async (tx) => {
      const row = await tx.signatures.get(id);
      const [view] = row ? await signatureViews(tx, [row]) : [];
      if (!view) throw new Problem('not-found', `There is no signature ${id} here.`);
      return view;
    });
  }
}
