import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { ProblemBox } from '../shell/problem-box.js';
import { withOffset } from '../words/time.js';
import { SecretBox } from './secret-box.js';
import { TellCode } from './tell-code.js';

type Address = Schemas['ReminderAddress'];

interface AddressListProps {
  addresses: Address[];
  changed(): Promise<void>;
}

/** Addresses in use, and those that were turned off with the reason. */
export function AddressList({ addresses, changed }: AddressListProps) {
  const inUse = addresses.filter(({ endedAt }) => endedAt === null);
  const ended = addresses.filter(({ endedAt }) => endedAt !== null);
  return (
    <>
      <ul class="plain-list">
        {inUse.map((one) => (
          <li key={one.id}>
            <AddressCard address={one} changed={changed} />
          </li>
        ))}
      </ul>
      {ended.length > 0 && (
        <details>
          <summary>No longer in use ({ended.length})</summary>
          <ul>
            {ended.map((one) => (
              <EndedLine key={one.id} address={one} />
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function AddressCard({ address, changed }: { address: Address; changed(): Promise<void> }) {
  const { operator } = useSession();
  const { send, sending, problem } = useAct();
  const [secret, setSecret] = useState<string | null>(null);
  const { id, kind, label, mayEnd, registration, twoSecretsUntil } = address;

  async function turnOff(): Promise<void> {
    if (!(await send({ method: 'DELETE', path: `/reminder-addresses/${id}` }))) return;
    announce(`${label} is turned off.`);
    await changed();
  }
  async function renew(): Promise<void> {
    const path = `/reminder-addresses/${id}/secret`;
    const answer = await send<Schemas['ReminderAddressEntered']>({ method: 'POST', path, body: {} });
    if (!answer) return;
    setSecret(answer.body.secret);
    await changed();
  }

  return (
    <div class="card">
      <p class="strong">
        {label}: <span class="breakable">{address.address}</span>
      </p>
      <p>
        {kind === 'email' ? 'Mail' : 'Signed messages to a program'}, {registration ?? 'every aircraft'},{' '}
        {address.forAll ? `of the operator, entered by ${address.of}` : `of ${address.of}`}
      </p>
      {address.confirmedAt === null && mayEnd && <TellCode address={address} changed={changed} />}
      {twoSecretsUntil && (
        <p class="soft">The secret before signs, too, until {withOffset(twoSecretsUntil, operator.base)}.</p>
      )}
      {secret && <SecretBox secret={secret} />}
      <ProblemBox problem={problem} />
      {mayEnd && (
        <div class="buttons">
          <button type="button" disabled={sending} onClick={() => void turnOff()} aria-label={`Turn off ${label}`}>
            Turn off
          </button>
          {kind === 'webhook' && (
            <button
              type="button"
              disabled={sending}
              onClick={() => void renew()}
              aria-label={`Make a new secret for ${label}`}
            >
              New secret
            </button>
          )}
        </div>
      )}
    </div>
  );
}

function EndedLine({ address }: { address: Address }) {
  const { operator } = useSession();
  const { label, endedAt, endedBecause } = address;
  return (
    <li>
      {label}: <span class="breakable">{address.address}</span>
      <span class="soft">
        {' '}
        since {endedAt && withOffset(endedAt, operator.base)}: {endedBecause}
      </span>
    </li>
  );
}
