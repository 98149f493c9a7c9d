import type { FlightRow, StationRow } from '#store';

/** A planned flight as pages show it: instants in UTC, and off-block as a clock at the station reads it. */
export function flightLine(flight: FlightRow, stations: readonly StationRow[]) {
  const from = stations.find(({ code }) => code === flight.fromStation);
  const to = stations.find(({ code }) => code === flight.toStation);
  return {
    id: flight.id,
    number: flight.number,
    from: flight.fromStation,
    fromName: from?.name ?? flight.fromStation,
    to: flight.toStation,
    toName: to?.name ?? flight.toStation,
    offBlockAt: flight.offBlockAt,
    offBlockLocal: localText(flight.offBlockAt, from?.zone ?? 'UTC'),
    onBlockAt: flight.onBlockAt,
    flightMinutes: flight.flightMinutes,
  };
}

/** `26 Jan 06:15` as a clock in the zone reads. */
export function localText(at: string, zone: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    day: '2-digit',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  })
    .format(new Date(at))
    .replace(',', '');
}
