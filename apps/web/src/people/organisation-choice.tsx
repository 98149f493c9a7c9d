import type { Schemas } from '../api/client.js';
import { Select } from '../shell/select.js';

interface OrganisationChoiceProps {
  organisations: Schemas['Members']['organisations'];
  value: string;
  onValue(value: string): void;
}

export function OrganisationChoice({ organisations, value, onValue }: OrganisationChoiceProps) {
  const options = organisations.map(({ id, name, approval }) => ({ value: id, text: `${name} (${approval})` }));
  return <Select label="Organisation" value={value} onValue={onValue} options={options} />;
}
