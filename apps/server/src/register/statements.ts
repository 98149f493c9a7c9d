/** The statements of acts on an aircraft's register; see defects/statements.ts. */
import type { ShiftList } from '#deferrals';
import { Id, OneOf } from '../http/fields.js';

export const REGISTER_ACTS = [
  'fitted',
  'removed',
  'seen',
  'move',
  'ended',
  'correction',
  'second-look',
  'as-written',
  'taken-back',
  'give',
  'take',
] as const;

export type RegisterSigned = (typeof REGISTER_ACTS)[number];

export class RegisterStatementQuery {
  @OneOf(REGISTER_ACTS, { description: 'Which act is to be signed.' })
  act!: RegisterSigned;

  @Id({ description: 'The correction that waits: of `second-look`, `as-written` and `taken-back`.', optional: true })
  asked?: string;
}

/** The acts that end a correction which waits. */
export const ENDS_A_CORRECTION: readonly RegisterSigned[] = ['second-look', 'as-written', 'taken-back'];

/** What the statement of an act on the register names. */
export interface RegisterFacts {
  registration: string;
  /** A hand-over is of the list as it stands: when the aircraft changes, the statement does. */
  list: ShiftList;
  /** `the place of lock pin at gear 2 (PIN-7)`, what the register says and what it should say; of those that end one. */
  correction: { of: string; was: string; now: string } | null;
}

export function registerStatement(act: RegisterSigned, { registration, list, correction }: RegisterFacts): string {
  const { left, open } = list;
  const { of, was, now } = correction ?? { of: '', was: '', now: '' };
  switch (act) {
    case 'fitted':
      return `I left the things named altered on ${registration} under the document named, as the approved data say, and each is listed with its place, its number and how it is undone.`;
    case 'removed':
      return `I undid the things named, which were left on ${registration}, and put them back as the approved data say.`;
    case 'seen':
      return `I looked at ${registration} and saw that the things named, which another person undid, are undone.`;
    case 'move':
      return `The things named stay on ${registration} and belong from now on to the owner named, for the reason given.`;
    case 'ended':
      return `The document named is no longer in force for ${registration}. What is left altered under it has no owner until it is undone or given one.`;
    case 'correction':
      return `What the register of ${registration} says of the thing named is mistyped. I have looked at the aircraft, and it should read as I write.`;
    case 'second-look':
      return `I looked at ${registration} myself, independently of the person who asked, and ${of} is as the correction says: “${now}”. The register says “${was}”.`;
    case 'as-written':
      return `I looked at ${registration} myself, independently of the person who asked, and ${of} is as the register says: “${was}”. That it should read “${now}” is not made.`;
    case 'taken-back':
      return `I asked that ${of}, which the register of ${registration} says is “${was}”, should read “${now}”, and take it back. It stays as it was written.`;
    case 'give':
      return `I hand over ${registration}. Left on it: ${listed(left.map(({ words, owner }) => `${words}, for ${owner}`))}. Open: ${listed(open)}.`;
    case 'take':
      return `I take over ${registration} and have read each line. Left on it: ${listed(left.map(({ words, owner }) => `${words}, for ${owner}`))}. Open: ${listed(open)}.`;
  }
}

function listed(lines: readonly string[]): string {
  return lines.length === 0 ? 'nothing' : lines.join('; ');
}
