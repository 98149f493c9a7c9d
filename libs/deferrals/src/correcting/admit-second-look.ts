/** What is left on the aircraft is corrected on paper only after a second person looked at the aircraft. 145.A.48. */
import type { Corrected } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { admitSignature } from '../signing/admit-signature.js';

/** Throws Refusal `second-look-missing`, `same-person-looking` or one of those of a signature. */
export function admitSecondLook(life: DefectLife, { secondLook, by, enteredAt }: Corrected): void {
  if (secondLook === null) throw new Refusal('second-look-missing', {});
  const { aircraft } = life;
  admitSignature(secondLook, 'inspect', { aircraft, enteredAt, act: 'second look', job: life });
  if (secondLook.person === by.person) throw new Refusal('same-person-looking', { name: by.name });
}
