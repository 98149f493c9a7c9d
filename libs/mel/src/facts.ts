/**
 * The registry of facts: everything a condition of a MEL may ask about.
 *
 * A fact is born here, in one row, and is used wherever a MEL engineer writes its id. To add one, add a row: the loader,
 * the questions on pages and the answers' age all read this file. A fact that is not listed does not exist, and a MEL that
 * names it is refused.
 *
 * The ages of weather facts follow the six hours between forecasts: common practice, no source. An operator may shorten
 * them by a setting.
 */
import type { Role } from './content.js';

export type FactFamily = 'aircraft' | 'entries' | 'flight' | 'work' | 'judgement';
export type FactType = 'boolean' | 'number' | 'choice';

/** What a fact is about besides the flight: nothing more, one entry, one piece of work, one judgement. */
export type FactSubject = 'none' | 'entry' | 'work' | 'judgement';

export interface FactDefinition {
  id: string;
  family: FactFamily;
  label: string;
  type: FactType;
  /** Of a number. */
  unit?: string;
  /** Of a number: the least and the greatest that somebody may answer. */
  between?: readonly [number, number];
  /** Of a choice; an open choice (any text) has none. */
  choices?: readonly string[];
  /** Empty when nobody is asked, because the fact is computed from what is recorded. */
  mayAnswer: readonly Role[];
  /** Minutes from observation, or one flight, or until somebody records a change. */
  validity: number | 'flight' | 'until-changed';
  /** `{subject}` stands for the title of the entry it asks about. */
  question: string;
  subject: FactSubject;
}

const FORECAST_MINUTES = 360;
const OFFICE: readonly Role[] = ['dispatcher', 'maintenance-control'];
const CREW: readonly Role[] = ['dispatcher', 'commander'];
const STATION: readonly Role[] = ['maintenance-control', 'technician'];

type Extra = Partial<Pick<FactDefinition, 'unit' | 'between' | 'choices' | 'validity' | 'subject'>>;

const flight = (
  name: string,
  type: FactType,
  mayAnswer: readonly Role[],
  label: string,
  question: string,
  extra: Extra = {},
): FactDefinition => ({
  id: `flight.${name}`,
  family: 'flight',
  label,
  type,
  mayAnswer,
  validity: 'flight',
  question,
  subject: 'none',
  ...extra,
});

const recorded = (
  id: string,
  family: FactFamily,
  type: FactType,
  label: string,
  question: string,
  extra: Extra & { mayAnswer?: readonly Role[] } = {},
): FactDefinition => ({
  id,
  family,
  label,
  type,
  mayAnswer: [],
  validity: 'until-changed',
  question,
  subject: 'none',
  ...extra,
});

const WEATHER = { validity: FORECAST_MINUTES };
const EXPECTED = { choices: ['none', 'forecast', 'known'], validity: FORECAST_MINUTES };
const ABOUT_ENTRY = { subject: 'entry' } as const;
const KEEPERS = { mayAnswer: ['engineer', 'administrator'] } as const;

// prettier-ignore
const ROWS: FactDefinition[] = [
  recorded('aircraft.registration', 'aircraft', 'choice', 'registration mark', 'Which aircraft is it?', KEEPERS),
  recorded('aircraft.type', 'aircraft', 'choice', 'aircraft type', 'Which type is the aircraft?', KEEPERS),
  recorded('aircraft.serial', 'aircraft', 'number', 'serial number', 'Which serial number has the aircraft?', KEEPERS),

  flight('crew', 'choice', CREW, 'crew', 'Which crew flies it?'),

  // `up` counts operative units: neither failed nor considered inoperative. `notFailed` sees failures only.
  recorded('entry.up', 'entries', 'number', 'operative', 'How many of {subject} are operative?', { unit: 'units', subject: 'entry', mayAnswer: STATION }),
  recorded('entry.notFailed', 'entries', 'number', 'not defective', 'How many of {subject} are not defective?', { unit: 'units', subject: 'entry', mayAnswer: STATION }),

  recorded('work.done', 'work', 'boolean', 'done and signed', 'Is {subject} done and signed for this flight?', { subject: 'work', validity: 'flight', mayAnswer: ['technician', 'commander'] }),
  recorded('judgement.accepted', 'judgement', 'boolean', 'accepted', 'Is {subject} accepted?', { subject: 'judgement', validity: 'flight', mayAnswer: ['commander', 'maintenance-control'] }),

  // The route.
  flight('etopsMinutes', 'number', OFFICE, 'ETOPS diversion time', 'How many minutes of ETOPS diversion time does the flight plan use (0 = not an ETOPS flight)?', { unit: 'minutes', between: [0, 999] }),
  flight('rvsm', 'boolean', CREW, 'flies in RVSM airspace', 'Does the flight enter RVSM airspace?'),
  flight('level', 'number', CREW, 'highest planned flight level', 'What is the highest planned flight level?', { unit: 'hundreds of feet', between: [0, 600] }),
  flight('overWater', 'boolean', CREW, 'extended over water', 'Does the flight go far enough over water to need over-water equipment?'),
  flight('kind', 'choice', OFFICE, 'kind of flight', 'What kind of flight is it?', { choices: ['passenger', 'cargo', 'ferry', 'training'] }),
  flight('passengersOnBoard', 'number', CREW, 'passengers on board', 'How many passengers are on board?', { unit: 'persons', between: [0, 999] }),
  flight('flightMinutes', 'number', CREW, 'planned airborne time', 'How long will the flight be airborne?', { unit: 'minutes', between: [1, 1440] }),
  flight('lowVisibility', 'boolean', CREW, 'low-visibility operation planned', 'Is a low-visibility take-off or approach planned?'),
  flight('minimaNeed', 'boolean', CREW, 'needed by the approach minima', 'Do the approach minima used on this flight need {subject}?', ABOUT_ENTRY),
  flight('enRouteNeeds', 'boolean', CREW, 'needed by the en-route operation', 'Does the en-route operation of this flight need {subject}?', ABOUT_ENTRY),
  flight('proceduresNeed', 'boolean', CREW, 'needed by a procedure of this flight', 'Does any procedure used on this flight need {subject}?', ABOUT_ENTRY),
  flight('rulesRequire', 'boolean', CREW, 'required by the rules of operation', 'Do the rules of operation require {subject} on this flight?', ABOUT_ENTRY),

  // Light and weather, over the whole flight.
  flight('daylight', 'choice', CREW, 'daylight', 'Is the whole flight in daylight (from the beginning of morning to the end of evening civil twilight)?', { choices: ['day', 'some-night'] }),
  flight('conditions', 'choice', CREW, 'meteorological conditions', 'Is the whole flight in visual meteorological conditions?', { choices: ['vmc', 'imc'], ...WEATHER }),
  flight('icing', 'choice', CREW, 'icing', 'Is icing known or forecast anywhere on the flight?', EXPECTED),
  flight('precipitation', 'choice', CREW, 'precipitation', 'Is precipitation known or forecast at departure, arrival or alternate?', EXPECTED),
  flight('visibleMoisture', 'boolean', CREW, 'visible moisture expected', 'Is visible moisture expected anywhere on the flight?', WEATHER),
  flight('thunderstorms', 'choice', CREW, 'thunderstorms', 'Are thunderstorms known or forecast on the route?', EXPECTED),
  flight('temperature', 'number', CREW, 'lowest temperature on the ground', 'What is the lowest temperature at departure and arrival?', { unit: 'degrees Celsius', between: [-90, 60], ...WEATHER }),

  // Runways and stations.
  flight('runwayWidthMetres', 'number', CREW, 'width of the narrowest runway', 'How wide is the narrowest runway planned, alternates included?', { unit: 'metres', between: [1, 200] }),
  flight('runwayState', 'choice', CREW, 'worst runway state', 'What is the worst runway state expected?', { choices: ['dry', 'wet', 'contaminated'], ...WEATHER }),
  flight('fromRepairStation', 'boolean', OFFICE, 'departs from a designated repair station', 'Does the flight depart from a station where this can be repaired?'),
  flight('toRepairStation', 'boolean', OFFICE, 'arrives at a designated repair station', 'Does the flight arrive at a station where this can be repaired?'),
  flight('authorisedPersonAtStation', 'boolean', STATION, 'authorised and equipped person at departure', 'Is an authorised and equipped person at the departure station for this departure?'),
  flight('groundPowerAtStation', 'boolean', OFFICE, 'ground power at both stations', 'Is electrical ground power available at departure and arrival?'),
  flight('groundAirAtStation', 'boolean', OFFICE, 'ground air at departure', 'Is ground air available at departure?'),

  // The dispatch office: each answer is for one open item, since a penalty taken for one item is not taken for another.
  flight('performanceAdjusted', 'boolean', CREW, 'performance adjusted', 'Is the performance of this flight adjusted for {subject}?', ABOUT_ENTRY),
  flight('fuelPenaltyApplied', 'boolean', CREW, 'fuel penalty applied', 'Is the fuel penalty for {subject} applied to this flight?', ABOUT_ENTRY),
  flight('inWeightAndBalance', 'boolean', CREW, 'entered in weight and balance', 'Is {subject} entered in the weight and balance of this flight?', ABOUT_ENTRY),

  // Fuel in the centre tank.
  flight('centreFuelNeeded', 'boolean', CREW, 'needs fuel from the centre tank', 'Does this flight need fuel from the centre tank?'),
  flight('alternateWithinWingFuel', 'boolean', CREW, 'alternate within wing-fuel range', 'Is an alternate within reach on wing-tank fuel wherever centre-tank fuel is needed?'),
  flight('centreTankEmpty', 'boolean', CREW, 'centre tank empty', 'Is the centre tank empty?'),
  flight('centreFuelInZeroFuelWeight', 'boolean', CREW, 'unusable centre fuel in zero-fuel weight', 'Is the unusable centre-tank fuel counted in zero-fuel weight and centre of gravity?'),
];

/** Every fact, in the order pages list them. */
export const FACTS: readonly FactDefinition[] = Object.freeze(ROWS.map((row) => Object.freeze(row)));

const BY_ID: ReadonlyMap<string, FactDefinition> = new Map(FACTS.map((fact) => [fact.id, fact]));

/** The definition of a fact by its id (`flight.icing`), or undefined when the registry has none. */
export const factOf = (id: string): FactDefinition | undefined => BY_ID.get(id);
