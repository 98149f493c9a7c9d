import { Module } from '@nestjs/common';
import { DefectsModule } from '../defects/defects.module.js';
import { DispatchModule } from '../dispatch/dispatch.module.js';
import { MelModule } from '../mel/mel.module.js';
import { AircraftEntriesService } from './entering/aircraft-entries.service.js';
import { EnteringController } from './entering/entering.controller.js';
import { FlightEntriesService } from './entering/flight-entries.service.js';
import { PlaceEntriesService } from './entering/place-entries.service.js';
import { FleetController } from './fleet.controller.js';
import { FleetService } from './fleet.service.js';
import { FlightPlansController } from './planning/flight-plans.controller.js';
import { FlightPlansService } from './planning/flight-plans.service.js';
import { StationsController } from './stations.controller.js';
import { StationsService } from './stations.service.js';
import { SwapController } from './swap.controller.js';
import { SwapService } from './swap.service.js';

/** Aircraft side by side, people at stations, exchange of rotations. */
@Module({
  imports: [DefectsModule, DispatchModule, MelModule],
  controllers: [FleetController, EnteringController, FlightPlansController, StationsController, SwapController],
  providers: [
    FleetService,
    AircraftEntriesService,
    PlaceEntriesService,
    FlightEntriesService,
    FlightPlansService,
    StationsService,
    SwapService,
  ],
})
export class FleetModule {}
