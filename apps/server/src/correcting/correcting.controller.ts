import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { type Called, Calling } from '../http/called.js';
import { ref } from '../openapi/shape.js';
import { CorrectBody, LookBody, StayBody } from './bodies.js';
import { CorrectingService } from './correcting.service.js';

@ApiTags('acts')
@Controller('api/defects/:id')
export class CorrectingController {
  constructor(private readonly correcting: CorrectingService) {}

  @Post('correction')
  @HttpCode(200)
  @ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' })
  @ApiHeader({ name: 'If-Match', required: true, description: 'ETag of the defect as it was read.' })
  @ApiOkResponse({ schema: ref('ActDone') })
  @ApiOperation({
    summary:
      'Sign that something was mistyped, and what it should read. The original stays readable; what decides something waits for a second person.',
  })
  correct(@Calling() calling: Called, @Body() body: CorrectBody): Promise<object> {
    return this.correcting.correct(calling, calling.id, body);
  }

  @Post('second-look')
  @HttpCode(200)
  @ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' })
  @ApiHeader({ name: 'If-Match', required: true, description: 'ETag of the defect as it was read.' })
  @ApiOkResponse({ schema: ref('ActDone') })
  @ApiOperation({ summary: 'Sign as the second person that a correction is right. Then it reads otherwise.' })
  look(@Calling() calling: Called, @Body() body: LookBody): Promise<object> {
    return this.correcting.look(calling, calling.id, body);
  }

  @Post('as-written')
  @HttpCode(200)
  @ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' })
  @ApiHeader({ name: 'If-Match', required: true, description: 'ETag of the defect as it was read.' })
  @ApiOkResponse({ schema: ref('ActDone') })
  @ApiOperation({
    summary:
      'Sign that a correction which waits is not made: as the second person who looked, or as the one who asked and takes it back.',
  })
  stay(@Calling() calling: Called, @Body() body: StayBody): Promise<object> {
    return this.correcting.stay(calling, calling.id, body);
  }
}
