import { Module } from '@nestjs/common';
import { CorrectingController } from '../correcting/correcting.controller.js';
import { CorrectingService } from '../correcting/correcting.service.js';
import { CorrectionAsked } from '../correcting/correction-asked.js';
import { DispatchModule } from '../dispatch/dispatch.module.js';
import { MelModule } from '../mel/mel.module.js';
import { PeopleModule } from '../people/people.module.js';
import { ActingService } from './acting.service.js';
import { ConcurrenceController } from './concurrence.controller.js';
import { CrewPlacardController } from './crew-placard.controller.js';
import { DefectViews } from './defect-views.service.js';
import { ActsController, DefectsController } from './defects.controller.js';
import { DefectsService } from './defects.service.js';
import { DeferralCheck } from './deferral-check.js';
import { LeavingService } from './leaving.service.js';
import { ReleasingService } from './releasing.service.js';
import { RepeatsController } from './repeats.controller.js';
import { RowChangesService } from './row-changes.service.js';

/** Defects and their life, from write-up to release. */
@Module({
  imports: [DispatchModule, MelModule, PeopleModule],
  controllers: [
    DefectsController,
    RepeatsController,
    ActsController,
    CorrectingController,
    CrewPlacardController,
    ConcurrenceController,
  ],
  providers: [
    ActingService,
    DefectsService,
    RowChangesService,
    LeavingService,
    CorrectingService,
    CorrectionAsked,
    ReleasingService,
    DefectViews,
    DeferralCheck,
  ],
  exports: [ActingService, DefectViews],
})
export class DefectsModule {}
