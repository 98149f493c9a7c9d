import { Module } from '@nestjs/common';
import { DispatchModule } from '../dispatch/dispatch.module.js';
import { PeopleModule } from '../people/people.module.js';
import { EffectsService } from './effects.service.js';
import { SettingsController } from './settings.controller.js';
import { SettingsService } from './settings.service.js';

/** Settings of an operator, and what a change of one would move. */
@Module({
  imports: [DispatchModule, PeopleModule],
  controllers: [SettingsController],
  providers: [SettingsService, EffectsService],
})
export class SettingsModule {}
