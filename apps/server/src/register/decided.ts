import type { Act, RegisterAct } from '#deferrals';

/** What was decided: acts on the register of the aircraft, and on defects that give, take or are corrected. */
export interface DecidedOnRegister {
  register: RegisterAct[];
  defects: { id: string; acts: Act[] }[];
}
