import { Module } from '@nestjs/common';
import { PeopleModule } from '../people/people.module.js';
import { LookingService } from './looking.service.js';
import { ZoneDataController } from './zone-data.controller.js';
import { ZoneDataService } from './zone-data.service.js';

/** Newer time-zone data, and what it moves. */
@Module({
  imports: [PeopleModule],
  controllers: [ZoneDataController],
  providers: [LookingService, ZoneDataService],
})
export class ZoneDataModule {}
