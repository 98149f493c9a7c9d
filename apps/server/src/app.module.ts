import { type DynamicModule, Module } from '@nestjs/common';
import { APP_FILTER, APP_GUARD, APP_PIPE } from '@nestjs/core';
import type { Logger } from 'pino';
import type { SecondEvaluator } from '#dispatch';
import { startOfDayHere, type StartOfDayIn } from '#intervals';
import type { HeadExport, Store } from '#store';
import { CardShelf } from './cards/card-shelf.js';
import { CardsController } from './cards/cards.controller.js';
import { CardsService } from './cards/cards.service.js';
import { CardLibraryController } from './cards/library.controller.js';
import { CardLibraryService } from './cards/library.service.js';
import { ActingService } from './defects/acting.service.js';
import { DeferralCheck } from './defects/deferral-check.js';
import { DefectViews } from './defects/defect-views.service.js';
import { ConcurrenceController } from './defects/concurrence.controller.js';
import { CrewPlacardController } from './defects/crew-placard.controller.js';
import { CorrectingController } from './defects/correcting.controller.js';
import { CorrectingService } from './defects/correcting.service.js';
import { ActsController, DefectsController } from './defects/defects.controller.js';
import { RepeatsController } from './defects/repeats.controller.js';
import { DefectsService } from './defects/defects.service.js';
import { RowChangesService } from './defects/row-changes.service.js';
import { LeavingService } from './defects/leaving.service.js';
import { ReleasingService } from './defects/releasing.service.js';
import { AuthorityDocumentsService } from './deferrals/authority-documents.service.js';
import { ExtendingController, ExtensionsController } from './deferrals/extensions.controller.js';
import { ExtensionsService } from './deferrals/extensions.service.js';
import { NoticesService } from './deferrals/notices.service.js';
import { BothJudges } from './dispatch/both-judges.js';
import { DispatchController } from './dispatch/dispatch.controller.js';
import { DispatchService } from './dispatch/dispatch.service.js';
import { FactsService } from './dispatch/facts.service.js';
import { JudgementsService } from './dispatch/judgements.service.js';
import { NextFlightsService } from './dispatch/next-flights.service.js';
import { AircraftEntriesService } from './fleet/entering/aircraft-entries.service.js';
import { EnteringController } from './fleet/entering/entering.controller.js';
import { FlightEntriesService } from './fleet/entering/flight-entries.service.js';
import { PlaceEntriesService } from './fleet/entering/place-entries.service.js';
import { FleetController } from './fleet/fleet.controller.js';
import { FleetService } from './fleet/fleet.service.js';
import { StationsController } from './fleet/stations.controller.js';
import { StationsService } from './fleet/stations.service.js';
import { SwapController } from './fleet/swap.controller.js';
import { SwapService } from './fleet/swap.service.js';
import { inputPipe } from './http/input.pipe.js';
import { ProblemFilter } from './http/problem.filter.js';
import { SessionGuard } from './http/session.guard.js';
import {
  CLOCK,
  type Clock,
  HEADS,
  LOGGER,
  SECOND_EVALUATOR,
  START_OF_DAY,
  STORE,
  TZDB,
  WATCH,
} from './http/tokens.js';
import { LiveController } from './live/live.controller.js';
import { LiveService } from './live/live.service.js';
import { MelController } from './mel/mel.controller.js';
import { MelService } from './mel/mel.service.js';
import { MelShelf } from './mel/mel-shelf.js';
import { FileIntakeService } from './movements/files/file-intake.service.js';
import { EnginesController } from './movements/engines/engines.controller.js';
import { EnginesService } from './movements/engines/engines.service.js';
import { IntakeService } from './movements/intake.service.js';
import { LegsController } from './movements/legs.controller.js';
import { LegsService } from './movements/legs.service.js';
import { MovementsController } from './movements/movements.controller.js';
import { StandingsService } from './movements/standings.service.js';
import { TrayService } from './movements/tray.service.js';
import { ProblemsController } from './openapi/problems.controller.js';
import { OpeningController } from './opening/opening.controller.js';
import { Challenges } from './people/challenges.js';
import { ErasuresService } from './people/erasures.service.js';
import { AccountsController } from './people/accounts.controller.js';
import { AccountsService } from './people/accounts.service.js';
import { AuthorisationsService } from './people/authorisations.service.js';
import { MembersController } from './people/members.controller.js';
import { MembersService } from './people/members.service.js';
import { OneOffsService } from './people/one-offs.service.js';
import { PasskeysController } from './people/passkeys.controller.js';
import { PasskeysService } from './people/passkeys.service.js';
import { PeopleController } from './people/people.controller.js';
import { Secrets } from './people/secrets.js';
import { SignaturesController } from './people/signatures.controller.js';
import { FailedAttempts } from './people/failed-attempts.service.js';
import { SignInService } from './people/sign-in.service.js';
import { SignOnController } from './people/sign-on.controller.js';
import { SIGN_ON, SignOnService, type SignOnSettings } from './people/sign-on.service.js';
import { PUBLIC_URL } from './people/site-address.js';
import { RecurrenceController } from './repetitive/recurrence.controller.js';
import { RecurrenceService } from './repetitive/recurrence.service.js';
import { AcceptancesController } from './accepting/acceptances.controller.js';
import { AcceptancesService } from './accepting/acceptances.service.js';
import { RegisterController } from './register/register.controller.js';
import { RegisterService } from './register/register.service.js';
import { RegisterViews } from './register/register-views.service.js';
import { EffectsService } from './settings/effects.service.js';
import { SettingsController } from './settings/settings.controller.js';
import { SettingsService } from './settings/settings.service.js';
import { CalendarController, FeedsController } from './watch/feeds.controller.js';
import { FeedsService } from './watch/feeds.service.js';
import { DocumentsController } from './documents/documents.controller.js';
import { DocumentsService } from './documents/documents.service.js';
import { PlacardsController } from './documents/placards.controller.js';
import { PlacardsService } from './documents/placards.service.js';
import { OpenItemsController } from './record/open-items.controller.js';
import { ExportsService } from './record/exports.service.js';
import { LossesController } from './record/losses.controller.js';
import { LossesService } from './record/losses.service.js';
import { HistoriesController } from './record/histories.controller.js';
import { AddressesService } from './watch/reminders/addresses.service.js';
import { ConfirmationsService } from './watch/reminders/confirmations.service.js';
import { DeliveryService } from './watch/reminders/delivery.service.js';
import { NoticingService } from './watch/reminders/noticing.service.js';
import { RemindersController } from './watch/reminders/reminders.controller.js';
import { RemindersService } from './watch/reminders/reminders.service.js';
import type { WatchOptions } from './watch/reminders/watch-options.js';
import { RetentionService } from './record/retention.service.js';
import { RecordStateService } from './record/record-state.service.js';
import { RecordController } from './record/record.controller.js';
import { LookingService } from './zone-data/looking.service.js';
import { ZoneDataController } from './zone-data/zone-data.controller.js';
import { ZoneDataService } from './zone-data/zone-data.service.js';

/** What the server is handed from outside: nothing in it reads a clock, the environment or a file by itself. */
export interface Outside {
  store: Store;
  logger: Logger;
  now: Clock;
  /** Version of the time-zone data, which every computed deadline carries. */
  tzdb: string;
  /** That data itself; another than this machine's is given only by tests. */
  startOfDayIn?: StartOfDayIn;
  /** What it needs to do something by itself; absent: it answers and does nothing else. */
  watch?: WatchOptions | null;
  /** What judges beside the rules engine; another one than its own is given only by tests. */
  secondEvaluator?: SecondEvaluator;
  /** Signs the heads of the record; absent or null where none are signed. */
  heads?: Pick<HeadExport, 'signNow'> | null;
  /** Where people open the pages; absent: as each request is addressed. */
  publicUrl?: string | null;
  /** A sign-on of somebody else that people may come in by; absent: the accounts kept here alone. */
  signOn?: SignOnSettings | null;
}

@Module({})
export class AppModule {
  static with({
    store,
    logger,
    now,
    tzdb,
    startOfDayIn = startOfDayHere,
    secondEvaluator,
    heads = null,
    watch = null,
    publicUrl = null,
    signOn = null,
  }: Outside): DynamicModule {
    return {
      module: AppModule,
      controllers: [
        PeopleController,
        MembersController,
        AccountsController,
        SignaturesController,
        PasskeysController,
        SignOnController,
        FleetController,
        EnteringController,
        OpeningController,
        StationsController,
        SwapController,
        DefectsController,
        RepeatsController,
        ActsController,
        CorrectingController,
        RegisterController,
        AcceptancesController,
        RecurrenceController,
        CrewPlacardController,
        ConcurrenceController,
        CardsController,
        CardLibraryController,
        ExtendingController,
        ExtensionsController,
        SettingsController,
        ZoneDataController,
        FeedsController,
        CalendarController,
        RemindersController,
        DispatchController,
        MelController,
        MovementsController,
        LegsController,
        EnginesController,
        LiveController,
        RecordController,
        HistoriesController,
        LossesController,
        OpenItemsController,
        DocumentsController,
        PlacardsController,
        ProblemsController,
      ],
      providers: [
        { provide: STORE, useValue: store },
        { provide: LOGGER, useValue: logger },
        { provide: CLOCK, useValue: now },
        { provide: TZDB, useValue: tzdb },
        { provide: START_OF_DAY, useValue: startOfDayIn },
        { provide: WATCH, useValue: watch },
        { provide: PUBLIC_URL, useValue: publicUrl },
        { provide: SIGN_ON, useValue: signOn },
        { provide: SECOND_EVALUATOR, useValue: secondEvaluator ?? null },
        { provide: HEADS, useValue: heads },
        { provide: Secrets, useFactory: () => new Secrets(() => Date.now()) },
        { provide: APP_GUARD, useClass: SessionGuard },
        { provide: APP_FILTER, useClass: ProblemFilter },
        { provide: APP_PIPE, useFactory: inputPipe },
        SignInService,
        FailedAttempts,
        MembersService,
        AccountsService,
        AuthorisationsService,
        OneOffsService,
        ErasuresService,
        RetentionService,
        RecordStateService,
        LossesService,
        Challenges,
        PasskeysService,
        SignOnService,
        FleetService,
        AircraftEntriesService,
        PlaceEntriesService,
        FlightEntriesService,
        ActingService,
        DefectsService,
        RowChangesService,
        LeavingService,
        CorrectingService,
        RegisterService,
        AcceptancesService,
        RecurrenceService,
        RegisterViews,
        ReleasingService,
        DefectViews,
        ExtensionsService,
        NoticesService,
        AuthorityDocumentsService,
        SettingsService,
        EffectsService,
        LookingService,
        ZoneDataService,
        FeedsService,
        LiveService,
        AddressesService,
        RemindersService,
        NoticingService,
        ConfirmationsService,
        DeliveryService,
        DeferralCheck,
        BothJudges,
        DispatchService,
        NextFlightsService,
        StationsService,
        SwapService,
        FactsService,
        JudgementsService,
        MelService,
        MelShelf,
        CardShelf,
        CardsService,
        CardLibraryService,
        IntakeService,
        FileIntakeService,
        TrayService,
        LegsService,
        EnginesService,
        StandingsService,
        ExportsService,
        DocumentsService,
        PlacardsService,
      ],
    };
  }
}
