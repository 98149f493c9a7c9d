import { type DynamicModule, Module } from '@nestjs/common';
import { APP_FILTER, APP_GUARD, APP_PIPE } from '@nestjs/core';
import { AcceptingModule } from './accepting/accepting.module.js';
import { CardsModule } from './cards/cards.module.js';
import { DefectsModule } from './defects/defects.module.js';
import { DeferralsModule } from './deferrals/deferrals.module.js';
import { DispatchModule } from './dispatch/dispatch.module.js';
import { DocumentsModule } from './documents/documents.module.js';
import { FleetModule } from './fleet/fleet.module.js';
import { inputPipe } from './http/input.pipe.js';
import { ProblemFilter } from './http/problem.filter.js';
import { SessionGuard } from './http/session.guard.js';
import { LiveModule } from './live/live.module.js';
import { MelModule } from './mel/mel.module.js';
import { MovementsModule } from './movements/movements.module.js';
import { OpeningModule } from './opening/opening.module.js';
import { ProblemsController } from './openapi/problems.controller.js';
import { type Outside, OutsideModule } from './outside.module.js';
import { PeopleModule } from './people/people.module.js';
import { RecordModule } from './record/record.module.js';
import { RegisterModule } from './register/register.module.js';
import { RepetitiveModule } from './repetitive/repetitive.module.js';
import { SettingsModule } from './settings/settings.module.js';
import { WatchModule } from './watch/watch.module.js';
import { ZoneDataModule } from './zone-data/zone-data.module.js';

/** Features, each a module of its own; who is asked for what is named by what a module exports. */
@Module({})
export class AppModule {
  static with(outside: Outside): DynamicModule {
    return {
      module: AppModule,
      imports: [
        OutsideModule.with(outside),
        PeopleModule,
        FleetModule,
        OpeningModule,
        DefectsModule,
        RegisterModule,
        AcceptingModule,
        RepetitiveModule,
        CardsModule,
        DeferralsModule,
        SettingsModule,
        ZoneDataModule,
        WatchModule,
        DispatchModule,
        MelModule,
        MovementsModule,
        LiveModule,
        RecordModule,
        DocumentsModule,
      ],
      controllers: [ProblemsController],
      providers: [
        { provide: APP_GUARD, useClass: SessionGuard },
        { provide: APP_FILTER, useClass: ProblemFilter },
        { provide: APP_PIPE, useFactory: inputPipe },
      ],
    };
  }
}
