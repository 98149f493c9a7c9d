import { Module } from '@nestjs/common';
import { DefectsModule } from '../defects/defects.module.js';
import { PeopleModule } from '../people/people.module.js';
import { ExportsService } from './exports.service.js';
import { HistoriesController } from './histories.controller.js';
import { HoldsController } from './keeping/holds.controller.js';
import { HoldsService } from './keeping/holds.service.js';
import { KeepingService } from './keeping/keeping.service.js';
import { LossesController } from './losses.controller.js';
import { LossesService } from './losses.service.js';
import { OpenItemsController } from './open-items.controller.js';
import { RecordStateService } from './record-state.service.js';
import { RecordController } from './record.controller.js';
import { RetentionService } from './retention.service.js';

/** The record: verified, proved, handed out, kept as long as it must be. */
@Module({
  imports: [DefectsModule, PeopleModule],
  controllers: [RecordController, HistoriesController, LossesController, OpenItemsController, HoldsController],
  providers: [RetentionService, RecordStateService, LossesService, ExportsService, HoldsService, KeepingService],
})
export class RecordModule {}
