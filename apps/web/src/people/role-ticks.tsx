import { Ticks } from '../shell/ticks.js';
import { roleWords } from '../words/words.js';

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

export function RoleTicks({ roles, onRoles }: { roles: string[]; onRoles(roles: string[]): void }) {
  const options = ROLES.map((value) => ({ value, text: roleWords(value) }));
  return <Ticks legend="Roles" options={options} values={roles} onValues={onRoles} />;
}
