import { Inject, Injectable } from '@nestjs/common';
import { glanceAhead, type GlanceAhead, nextFlights, type NextFlights } from '#dispatch';
import type { AircraftRow, FlightRow, Tx } from '#store';
import type { OpenedDefect } from '../defects/defect-book.js';
import type { OperatorSettings } from '../people/operator-settings.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { loadDay } from './day-plan.js';
import { aircraftOr404, DispatchService } from './dispatch.service.js';
import { stationFacts, stationNames } from './station-book.js';

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
    const told = await nextFlights(mel, situation, flights, { stations, stationNames: await stationNames(tx) });
    return { at, aircraft: id, registration: aircraft.registration, ...told };
  }

  /** The same at a glance, for one line of a fleet: which are kept and which breaks first, without the reasons. */
  async glance(
    tx: Tx,
    aircraft: AircraftRow,
    planned: readonly FlightRow[],
    settings: OperatorSettings,
  ): Promise<{ ahead: GlanceAhead; opened: readonly OpenedDefect[] }> {
    const mel = await this.dispatch.melFor(tx, aircraft);
    const asked = { aircraft, at: this.now(), settings, proposals: [] };
    const { situation, flights, opened } = await loadDay(tx, asked, planned);
    const stations = await stationFacts(tx, aircraft.type);
    return { ahead: await glanceAhead(mel, situation, flights, { stations }), opened };
  }
}
