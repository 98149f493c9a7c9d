/** The second line of a message: `ZZ0122A/20.QAB-AX.QXC`. */
export interface FlightLine {
  /** Without leading zeros: `ZZ122A`. */
  flight: string;
  /** The scheduled UTC day of departure, 1 to 31. */
  day: number;
  registration: string;
  station: string;
  warnings: string[];
}

/** Two characters of IATA with at least one letter or three letters of ICAO, one to four digits, a suffix letter. */
const shape = /^([A-Z]{3}|[A-Z][A-Z0-9]|\d[A-Z])(\d{1,4})([A-Z]?)\/(\d\d)\.([^\s.]{2,10})\.([A-Z]{3})$/;

/** Null when the line is of another shape. */
export function readFlightLine(line: string, airlineCodes: Readonly<Record<string, string>>): FlightLine | null {
  const [, airline = '', number = '', suffix = '', day = '', sent = '', station = ''] = shape.exec(line) ?? [];
  const registration = sent.toUpperCase().replace(/[^A-Z0-9]/g, '');
  if (station === '' || registration.length < 2 || Number(day) < 1 || Number(day) > 31) return null;
  const warnings =
    registration === sent ? [] : [`The registration ${sent} was read as ${registration}: letters and digits only.`];
  return {
    flight: `${Object.hasOwn(airlineCodes, airline) ? airlineCodes[airline] : airline}${Number(number)}${suffix}`,
    day: Number(day),
    registration,
    station,
    warnings,
  };
}
