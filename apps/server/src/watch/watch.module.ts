import { Module } from '@nestjs/common';
import { DispatchModule } from '../dispatch/dispatch.module.js';
import { MelModule } from '../mel/mel.module.js';
import { CalendarController, FeedsController } from './feeds.controller.js';
import { FeedsService } from './feeds.service.js';
import { AddressesService } from './reminders/addresses.service.js';
import { ConfirmationsService } from './reminders/confirmations.service.js';
import { DeliveryService } from './reminders/delivery.service.js';
import { NoticingService } from './reminders/noticing.service.js';
import { RemindersController } from './reminders/reminders.controller.js';
import { RemindersService } from './reminders/reminders.service.js';

/** Calendars and reminders. */
@Module({
  imports: [DispatchModule, MelModule],
  controllers: [FeedsController, CalendarController, RemindersController],
  providers: [
    FeedsService,
    AddressesService,
    RemindersService,
    NoticingService,
    ConfirmationsService,
    DeliveryService,
  ],
})
export class WatchModule {}
