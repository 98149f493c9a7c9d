import { thingInWords } from '#deferrals';
import type { AircraftRow, Tx } from '#store';
import { Problem } from '../http/problem.js';
import { askedOf, type LivesOfAircraft } from './asked-of.js';
import { shiftListOf } from './shift-list.js';
import { ENDS_A_CORRECTION, type RegisterFacts, type RegisterSigned, registerStatement } from './statements.js';

type Seen = LivesOfAircraft & { tx: Tx; row: AircraftRow };

const FIELD_WORDS = { where: 'the place', tag: 'the number' } as const;

/**
 * The statement of an act on the register as it stands. Throws Problem `invalid-input` where it ends a correction and
 * nobody says which, Refusal `correction-not-asked` where that one does not wait.
 */
export async function statementOnRegister(seen: Seen, act: RegisterSigned, asked?: string): Promise<string> {
  const { tx, row, opened } = seen;
  const correction = ENDS_A_CORRECTION.includes(act) ? correctionOf(seen, asked) : null;
  const list = await shiftListOf(tx, row, opened);
  return registerStatement(act, { registration: row.registration, list, correction });
}

function correctionOf(seen: Seen, asked: string | undefined): RegisterFacts['correction'] {
  if (asked === undefined) {
    const reason = 'say which correction, by the id that the register gives it';
    throw new Problem('invalid-input', 'It is not said which correction.', {
      errors: [{ pointer: '/asked', reason }],
    });
  }
  const { item: id, field, was, now } = askedOf(seen, asked);
  const things = [...seen.life.things.map(({ item }) => item), ...seen.opened.flatMap(({ life }) => life.left)];
  const thing = things.find((one) => one.id === id);
  if (thing === undefined) throw new Error(`The correction ${asked} is of nothing that is left.`);
  const of = field === 'where' || field === 'tag' ? FIELD_WORDS[field] : field;
  return { of: `${of} of ${thingInWords(thing)}`, was: was ?? 'nothing', now };
}
