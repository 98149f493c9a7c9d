import { Module } from '@nestjs/common';
import { DefectsModule } from '../defects/defects.module.js';
import { DispatchModule } from '../dispatch/dispatch.module.js';
import { PeopleModule } from '../people/people.module.js';
import { AcceptancesController } from './acceptances.controller.js';
import { AcceptancesService } from './acceptances.service.js';

/** The commander's acceptance of one flight. */
@Module({
  imports: [DefectsModule, DispatchModule, PeopleModule],
  controllers: [AcceptancesController],
  providers: [AcceptancesService],
})
export class AcceptingModule {}
