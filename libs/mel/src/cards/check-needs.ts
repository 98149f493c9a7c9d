/**
 * What a step needs can be held when it is done: a part by the number that is entered where it is fitted, a second person
 * once, equipment by what it is called. An inspection is one look by one other person, so nothing is stated with it.
 */
import { repeated } from '../checks/names.js';
import type { Path } from '../checks/places.js';
import type { Finding } from '../mel-error.js';
import { statedNeeds, type CardStep, type Need } from './card.js';

export function needFindings(step: CardStep, path: Path): Finding[] {
  const { needs = [] } = step;
  const place = (at: number): Path => [...path, 'needs', at];
  return [
    ...repeated(
      statedNeeds(step).map((need) => ({ name: need.what, path: [...place(needs.indexOf(need)), 'what'] })),
      'within this step the equipment',
    ),
    ...needs.flatMap((need, at) => oneNeed(step, need, place(at))),
    ...needs
      .flatMap(({ kind }, at) => (kind === 'second-person' ? [at] : []))
      .slice(1)
      .map((at) => ({ path: place(at), reason: 'a step has one second person; make another step for a third' })),
  ];
}

function oneNeed({ kind: step }: CardStep, need: Need, path: Path): Finding[] {
  const { kind, what, calibrated, licence, privilege } = need;
  const of = (key: string, reason: string): Finding[] => [{ path: [...path, key], reason }];
  if (calibrated !== undefined && kind !== 'tool' && kind !== 'equipment') {
    return of('calibrated', 'only a tool or equipment is calibrated');
  }
  if (licence !== undefined && kind !== 'second-person') return of('licence', 'only a second person holds a licence');
  if (privilege !== undefined && kind !== 'second-person') {
    return of('privilege', 'only a second person holds an authorisation');
  }
  if (kind === 'part' && step !== 'renew' && step !== 'out') {
    return of('kind', `"${what}" is a part, so a step that renews or counts out enters its number`);
  }
  const stated = kind === 'second-person' || statedNeeds({ needs: [need] }).length > 0;
  return step === 'inspect' && stated
    ? of('kind', `an inspection states no "${what}": use it in a step of its own`)
    : [];
}
