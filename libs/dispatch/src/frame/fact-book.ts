/**
 * Looks up the facts that no choice of rows can change: about the aircraft and the flight.
 *
 * A fact is used only while it is valid at the departure it is used for. One that is missing, asked for and not yet
 * answered, expired by then, or of the wrong type is unknown, with the reason.
 */
import { factOf, misfitOf, readFactKey } from '#mel';
import { Unknown, type FactView } from '../evaluate/marker.js';
import type { KnownFact, Situation } from '../situation.js';
import { millisOf, plusMinutes } from './moment.js';

type Given = KnownFact | KnownFact['value'];

export class FactBook {
  readonly #views = new Map<string, FactView>();
  readonly #given: Readonly<Record<string, Given>>;
  readonly #situation: Situation;
  readonly #departs: number;

  constructor(situation: Situation) {
    const { flight, aircraft } = situation;
    this.#situation = situation;
    this.#departs = millisOf('flight.offBlockAt', flight?.offBlockAt ?? situation.at);
    this.#given = {
      'aircraft.registration': aircraft.registration,
      'aircraft.type': aircraft.type,
      'aircraft.serial': aircraft.serial,
      ...(flight?.flightMinutes === undefined ? {} : { 'flight.flightMinutes': flight.flightMinutes }),
      ...situation.facts,
      ...flight?.facts,
    };
  }

  view(key: string): FactView {
    const known = this.#views.get(key);
    if (known !== undefined) return known;
    const view = this.#look(key);
    this.#views.set(key, view);
    return view;
  }

  #look(key: string): FactView {
    if (this.#situation.flight === null && key.startsWith('flight.')) {
      return { value: new Unknown('no flight is planned') };
    }
    const given = Object.hasOwn(this.#given, key) ? this.#given[key] : undefined;
    if (given === undefined) return { value: new Unknown('nobody has said') };
    const fact: KnownFact = typeof given === 'object' && given !== null ? given : { value: given };
    if (fact.value === null) return { ...origin(fact), value: new Unknown('asked for and not yet answered') };
    const definition = readFactKey(key)?.fact;
    const misfit = definition === undefined ? 'it is not in the registry of facts' : misfitOf(definition, fact.value);
    if (misfit !== null) return { ...origin(fact), value: new Unknown(misfit) };
    const validUntil = fact.validUntil ?? ageLimit(key, fact);
    const dated: FactView = {
      ...origin(fact),
      ...(validUntil === undefined ? {} : { validUntil }),
      value: fact.value,
    };
    if (validUntil === undefined || millisOf(`${key}.validUntil`, validUntil) >= this.#departs) return dated;
    return { ...dated, value: new Unknown(`it was valid until ${validUntil} only, which is before departure`) };
  }
}

function origin({ source, by, observedAt }: KnownFact): Omit<FactView, 'value'> {
  return {
    ...(source === undefined ? {} : { source }),
    ...(by === undefined ? {} : { by }),
    ...(observedAt === undefined ? {} : { observedAt }),
  };
}

/** A fact of limited age that names no end of its own is valid for so many minutes from its observation. */
function ageLimit(key: string, { observedAt }: KnownFact): string | undefined {
  const validity = factOf(key.replace(/\[.*$/, ''))?.validity;
  if (observedAt === undefined || typeof validity !== 'number') return undefined;
  return plusMinutes(`${key}.observedAt`, observedAt, validity);
}
