import { Inject, Injectable } from '@nestjs/common';
import { nextFlights, type NextFlights } from '#dispatch';
import type { Tx } from '#store';
import { CLOCK, type Clock } from '../http/tokens.js';
import { loadDay } from './day-plan.js';
import { aircraftOr404, DispatchService } from './dispatch.service.js';
import { stationFacts } from './station-book.js';

/** As many as a page shows; also what counts as a rotation that may change hands. */
export const FLIGHTS_AHEAD = 8;

/** Looks ahead along what is planned for an aircraft. */
@Injectable()
export class NextFlightsService {
  constructor(
    private readonly dispatch: DispatchService,
    @Inject(CLOCK) private readonly now: Clock,
  ) {}

  async ofAircraft(
    tx: Tx,
    id: string,
  ): Promise<NextFlights & { at: string; aircraft: string; registration: string }> {
    const aircraft = await aircraftOr404(tx, id);
    const at = this.now();
    const planned = await tx.flights.planned(aircraft.id, at, FLIGHTS_AHEAD);
    const settings = await this.dispatch.settings(tx);
    const mel = await this.dispatch.melFor(tx, aircraft);
    const { situation, flights } = await loadDay(tx, { aircraft, at, settings, proposals: [] }, planned);
    const stations = await stationFacts(tx, aircraft.type);
    const told = await nextFlights(mel, situation, flights, { stations });
    return { at, aircraft: id, registration: aircraft.registration, ...told };
  }
}
