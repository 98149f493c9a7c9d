import { Module } from '@nestjs/common';
import { DispatchModule } from '../dispatch/dispatch.module.js';
import { MelModule } from '../mel/mel.module.js';
import { PeopleModule } from '../people/people.module.js';
import { EnginesController } from './engines/engines.controller.js';
import { EnginesService } from './engines/engines.service.js';
import { FileIntakeService } from './files/file-intake.service.js';
import { IntakeService } from './intake.service.js';
import { LegsController } from './legs.controller.js';
import { LegsService } from './legs.service.js';
import { MovementsController } from './movements.controller.js';
import { StandingsService } from './standings.service.js';
import { TrayService } from './tray.service.js';

/** Movement messages, legs and counters. */
@Module({
  imports: [DispatchModule, MelModule, PeopleModule],
  controllers: [MovementsController, LegsController, EnginesController],
  providers: [IntakeService, FileIntakeService, TrayService, LegsService, EnginesService, StandingsService],
})
export class MovementsModule {}
