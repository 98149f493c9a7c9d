/**
 * The published JSON Schema (draft 2020-12) of a case file: one aircraft, its open defects, one flight or the flights of
 * its day, what is known.
 *
 * Short forms: a fact may be its bare value; a piece of work may be its key alone, which says that it was done and signed
 * at the case's instant and for its flight. What a case does not say is unknown.
 */
const ROLES = [
  'technician',
  'maintenance-control',
  'engineer',
  'commander',
  'dispatcher',
  'quality',
  'mel-engineer',
  'administrator',
];

const name = { type: 'string', minLength: 1, maxLength: 200 };
const key = { type: 'string', minLength: 1, maxLength: 220 };
const sentence = { type: 'string', minLength: 1, maxLength: 4000 };
const instant = { type: 'string', minLength: 1, maxLength: 40 };
const day = { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$' };
const whole = { type: 'integer', minimum: 0, maximum: 10_000_000 };
const scalar = {
  anyOf: [{ type: 'string', maxLength: 200 }, { type: 'number' }, { type: 'boolean' }, { type: 'null' }],
};

const list = (items: object, maxItems = 200, minItems = 0) => ({ type: 'array', minItems, maxItems, items });
const closed = (required: string[], properties: Record<string, object>) => ({
  type: 'object',
  additionalProperties: false,
  required,
  properties,
});

const used = closed([], {
  flights: whole,
  flightDays: whole,
  lastFlightDayOn: { ...day, type: ['string', 'null'] },
  flightMinutes: whole,
  blockMinutes: whole,
  cycles: whole,
  lastFlightDayStartsAt: { ...instant, type: ['string', 'null'] },
  engineMinutes: whole,
  engineCycles: whole,
  designatedDepartures: whole,
  baseOpportunities: whole,
  station: name,
  standsSince: instant,
});

const fact = {
  if: { type: 'object' },
  then: closed(['value'], { value: scalar, source: name, by: name, observedAt: instant, validUntil: instant }),
  else: scalar,
};
const facts = { type: 'object', maxProperties: 200, propertyNames: key, additionalProperties: fact };

const basis = closed(['kind', 'reference', 'limit'], {
  kind: { enum: ['cdl', 'nef', 'approved-data', 'design-approval', 'permit', 'authority-document'] },
  reference: name,
  limit: sentence,
  // Read by the MEL loader, as the provisos of a row are.
  conditions: { type: 'array', maxItems: 40 },
});

const defect = closed(['entry', 'recordedAt'], {
  id: name,
  entry: { ...name, type: ['string', 'null'] },
  unit: name,
  units: { ...list(name, 64, 1), uniqueItems: true },
  row: { ...name, type: ['string', 'null'] },
  signed: { type: 'boolean' },
  insteadOf: name,
  rectifyMinutes: whole,
  recordedAt: instant,
  deadline: closed([], { lastDay: day, endsAt: instant, tzdb: name }),
  used,
  basis,
});

const flight = closed(['id', 'from', 'to', 'offBlockAt'], {
  id: name,
  number: name,
  from: name,
  to: name,
  offBlockAt: instant,
  onBlockAt: instant,
  flightMinutes: whole,
  blockMinutes: whole,
  facts,
});

const work = {
  if: { type: 'object' },
  then: closed(['work'], {
    work: key,
    defect: name,
    doneAt: instant,
    by: name,
    validUntil: instant,
    forFlight: name,
    usedSince: used,
    possible: { type: ['boolean', 'null'] },
    because: sentence,
  }),
  else: key,
};

const judgement = closed(['judgement', 'accepted', 'by', 'role'], {
  judgement: key,
  accepted: { type: 'boolean' },
  by: name,
  role: { enum: ROLES },
  at: instant,
  validUntil: instant,
  forFlight: name,
  givenOn: closed(['items', 'flights'], {
    items: list(closed(['defect', 'row'], { defect: key, row: { type: ['string', 'null'], maxLength: 200 } })),
    flights: list(
      closed(['from', 'to', 'facts'], {
        from: name,
        to: name,
        facts: { type: 'object', additionalProperties: scalar, maxProperties: 200 },
      }),
    ),
  }),
});

export const CASE_SCHEMA: Readonly<Record<string, unknown>> = Object.freeze({
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  $id: 'urn:proviso:case:1',
  title: 'Proviso case, format 1',
  description: 'One aircraft, its open defects, one flight or several, and what is known of them at one instant.',
  ...closed(['at', 'aircraft'], {
    at: instant,
    tzdb: { type: 'string', pattern: '^[\\w.+-]{1,32}$' },
    aircraft: closed(['registration', 'type'], {
      registration: name,
      type: name,
      configuration: { ...list(name, 200), type: ['array', 'null'] },
      serial: { ...whole, type: ['integer', 'null'] },
    }),
    defects: list(defect),
    flight: { ...flight, type: ['object', 'null'] },
    flights: list(flight, 200, 1),
    stations: list(
      closed(['station', 'maintenance'], {
        station: name,
        maintenance: { type: ['boolean', 'null'] },
        from: name,
        until: name,
        source: sentence,
      }),
    ),
    facts,
    work: list(work, 500),
    judgements: list(judgement),
    directives: list(closed(['number', 'entry'], { number: name, entry: name, units: list(name, 50, 1) })),
    gates: closed([], { unanswered: list(sentence), openWork: list(sentence), orphans: list(sentence) }),
    settings: closed([], {
      base: name,
      expiryInFlight: { enum: ['departure-inside', 'arrival-inside'] },
      pairCountsFrom: { enum: ['last-record', 'first-record'] },
      changeOfRow: { enum: ['keep-earliest', 'own-window'] },
      combinationNeedsAcceptance: { type: 'boolean' },
      budget: { type: 'integer', minimum: 1, maximum: 10_000_000 },
      counting: closed([], {
        hourClock: { enum: ['airborne', 'block'] },
        hoursCountedAt: { enum: ['arrival', 'departure'] },
        rampReturnMakesFlightDay: { type: 'boolean' },
        flightDay: { enum: ['calendar-day', 'from-first-out'] },
        equalityAtLimit: { enum: ['inside', 'outside'] },
        designatedStations: list(name, 200),
        bases: list(name, 200),
        opportunityMinutes: whole,
      }),
    }),
  }),
});
