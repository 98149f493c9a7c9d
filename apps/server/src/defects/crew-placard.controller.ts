import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { fitPlacard } from '#deferrals';
import { newId } from '#store';
import { type Called, Calling } from '../http/called.js';
import { Text } from '../http/fields.js';
import { Roles } from '../http/session.js';
import { ref } from '../openapi/shape.js';
import { actorOf } from '../people/signer.js';
import { ActingService } from './acting.service.js';

export class CrewPlacardBody {
  @Text(300, { description: 'What it says; the words that it is temporary and of the crew are put before it.' })
  text!: string;

  @Text(200, { description: 'Where it is fitted.' })
  where!: string;

  @Text(40, { description: 'Number on the placard, or the sheet it was cut from.' })
  tag!: string;
}

/** Never the text that a row asks for: its own placard is still owed, and fitted by somebody who signs for it. */
export const BY_THE_CREW = 'TEMPORARY, fitted by the crew:';

/**
 * A placard that the crew fitted on the way: away from base, with nobody of maintenance there. It is one of the things
 * left on the aircraft and is counted in like the others.
 */
@ApiTags('acts')
@Controller('api/defects/:id/crew-placard')
export class CrewPlacardController {
  constructor(private readonly acting: ActingService) {}

  @Post()
  @HttpCode(200)
  @Roles('commander')
  @ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' })
  @ApiHeader({ name: 'If-Match', required: true, description: 'ETag of the defect as it was read.' })
  @ApiOkResponse({ schema: ref('ActDone') })
  @ApiOperation({ summary: 'Enter a temporary placard that the crew fitted.' })
  fit(@Calling() calling: Called, @Body() { text, where, tag }: CrewPlacardBody): Promise<object> {
    return this.acting.act(calling, calling.id, null, async ({ tx, session, life, context }) => {
      const by = await actorOf(tx, session.personId, 'commander');
      const said = `${BY_THE_CREW} ${text}`;
      return fitPlacard(life, { id: newId(), by, text: said, position: where, tag }, context);
    });
  }
}
