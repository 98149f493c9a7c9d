import { Module } from '@nestjs/common';
import { DispatchModule } from '../dispatch/dispatch.module.js';
import { PeopleModule } from '../people/people.module.js';
import { RecurrenceController } from './recurrence.controller.js';
import { RecurrenceService } from './recurrence.service.js';

/** Defects that keep coming back, and what control decides of them. */
@Module({
  imports: [DispatchModule, PeopleModule],
  controllers: [RecurrenceController],
  providers: [RecurrenceService],
})
export class RepetitiveModule {}
