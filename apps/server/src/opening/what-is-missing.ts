/** What an operator still needs before its first aircraft can be judged, step by step in the order it is done. */
import type { Role } from '#mel';
import type { Member, Tx } from '#store';
import { works } from '../people/members.service.js';

/** One step of a new operator, and who takes it where. */
export interface Step {
  step: string;
  done: boolean;
  what: string;
  by: Role[];
  page: string;
}

/** Without one of each, something has nobody to do it. */
const NEEDED_ROLES = [
  'mel-engineer',
  'quality',
  'technician',
  'maintenance-control',
  'engineer',
] as const satisfies readonly Role[];

export async function stepsOf(tx: Tx, at: string): Promise<Step[]> {
  const stations = await tx.operators.stations();
  const aircraft = await tx.aircraft.inService();
  const members = (await tx.people.members()).filter((one) => works(one, at));
  const organisations = await tx.people.organisations();
  const types = [...new Set(aircraft.map(({ type }) => type))].toSorted();
  const withoutMel: string[] = [];
  for (const type of types) if ((await tx.mel.inForce(type)) === null) withoutMel.push(type);
  const certifying = await certifyingOf(tx, members, at);
  const missingRoles = NEEDED_ROLES.filter((role) => !members.some(({ roles }) => roles.includes(role)));
  return [
    {
      step: 'stations',
      done: stations.length > 0,
      what: 'Enter the stations it flies to',
      by: ['administrator'],
      page: '/control/stations',
    },
    {
      step: 'aircraft',
      done: aircraft.length > 0,
      what: 'Enter its aircraft',
      by: ['administrator', 'engineer'],
      page: '/control/aircraft',
    },
    {
      step: 'people',
      done: missingRoles.length === 0,
      what: `Make accounts${missingRoles.length === 0 ? '' : `; nobody yet as ${missingRoles.map(inWords).join(', ')}`}`,
      by: ['administrator'],
      page: '/people',
    },
    {
      step: 'mel',
      done: types.length > 0 && withoutMel.length === 0,
      what: withoutMel.length === 0 ? 'Load the MEL of each type' : `Load the MEL of ${withoutMel.join(', ')}`,
      by: ['mel-engineer'],
      page: '/mel',
    },
    {
      step: 'organisations',
      done: organisations.length > 0,
      what: 'Enter the organisations whose approvals people sign under',
      by: ['administrator', 'quality'],
      page: '/people',
    },
    {
      step: 'authorisations',
      done: certifying.defer && certifying.release,
      what: 'Grant who may defer and who may release',
      by: ['quality'],
      page: '/people',
    },
    {
      step: 'second-administrator',
      done: members.filter(({ roles }) => roles.includes('administrator')).length > 1,
      what: 'Make a second administrator: nobody changes or unlocks their own account',
      by: ['administrator'],
      page: '/people',
    },
  ];
}

async function certifyingOf(tx: Tx, members: readonly Member[], at: string) {
  const granted = new Set<string>();
  for (const { personId } of members) {
    for (const one of await tx.people.authorisationsOf(personId)) {
      const valid = one.revokedAt === null && one.validFrom <= at && (one.validUntil === null || at < one.validUntil);
      if (valid && one.defectId === null) for (const privilege of one.privileges) granted.add(privilege);
    }
  }
  return { defer: granted.has('defer'), release: granted.has('release') };
}

const inWords = (role: Role): string => role.replace('mel-', 'MEL ').replaceAll('-', ' ');
