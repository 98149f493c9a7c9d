import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { announce } from '../shell/announce.js';
import { Choice, Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { SecretBox } from './secret-box.js';

interface AddressFormProps {
  mayAddForAll: boolean;
  /** Endpoints on machines inside may be reached. */
  inside: boolean;
  entered(): Promise<void>;
}

const KINDS = [
  { value: 'email', text: 'A mailbox' },
  { value: 'webhook', text: 'A program (signed messages)' },
] as const;
const OWNERS = [
  { value: 'me', text: 'Me' },
  { value: 'operator', text: 'The operator' },
] as const;

type Kind = (typeof KINDS)[number]['value'];
type Owner = (typeof OWNERS)[number]['value'];
const EVERY = '';

/** Enters a mailbox or an endpoint. */
export function AddressForm({ mayAddForAll, inside, entered }: AddressFormProps) {
  const [kind, setKind] = useState<Kind>('email');
  const [address, setAddress] = useState('');
  const [label, setLabel] = useState('');
  const [of, setOf] = useState<Owner>('me');
  const [aircraft, setAircraft] = useState(EVERY);
  const [secret, setSecret] = useState<string | null>(null);
  const { send, sending, problem } = useAct();

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const body = { kind, address, label, of, ...(aircraft === EVERY ? {} : { aircraft }) };
    const answer = await send<Schemas['ReminderAddressEntered']>({
      method: 'POST',
      path: '/reminder-addresses',
      body,
    });
    if (!answer) return;
    announce(kind === 'email' ? `A code is sent to ${label}.` : `Reminders go to ${label} from now on.`);
    setSecret(answer.body.secret);
    setAddress('');
    setLabel('');
    await entered();
  }

  return (
    <form class="card" onSubmit={submit} aria-label="Add an address">
      <p class="strong">Add an address</p>
      <FieldErrors.Provider value={problem?.errors ?? []}>
        <Choice legend="Reminders go to" options={KINDS} value={kind} onValue={setKind} />
        <Field
          label={kind === 'email' ? 'Mailbox' : 'Address of the endpoint'}
          hint={kind === 'email' ? 'Such as engineer@example.org' : endpointHint(inside)}
          value={address}
          onValue={setAddress}
          pointer="/address"
          most={500}
          required
        />
        <Field
          label="What you call it"
          hint="Such as: at work"
          value={label}
          onValue={setLabel}
          pointer="/label"
          most={80}
          required
        />
        {mayAddForAll && <Choice legend="It belongs to" options={OWNERS} value={of} onValue={setOf} />}
        <AircraftChoice value={aircraft} onValue={setAircraft} />
      </FieldErrors.Provider>
      <ProblemBox problem={problem} />
      {secret && <SecretBox secret={secret} />}
      <div class="buttons">
        <button class="main" disabled={sending}>
          Add
        </button>
      </div>
    </form>
  );
}

function endpointHint(inside: boolean): string {
  const where = inside ? '' : ', of a machine out in the open';
  return `Begins with https:// or http://${where}; no name and secret in it`;
}

function AircraftChoice({ value, onValue }: { value: string; onValue(value: string): void }) {
  const { value: fleet } = useRead<Schemas['Fleet']>('/fleet');
  return (
    <div class="field">
      <label for="reminded-aircraft">Aircraft</label>
      <select
        id="reminded-aircraft"
        value={value}
        onChange={(event: { currentTarget: { value: string } }) => onValue(event.currentTarget.value)}
      >
        <option value={EVERY}>Every aircraft</option>
        {fleet?.aircraft.map(({ id, registration }) => (
          <option key={id} value={id}>
            {registration}
          </option>
        ))}
      </select>
    </div>
  );
}
