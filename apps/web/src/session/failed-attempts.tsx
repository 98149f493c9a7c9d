import { carryOut, freshKey } from '../api/client.js';
import type { Signed } from './session.js';

/** Said on every page until the owner of the name says that it was seen. */
export function FailedAttempts({ signed: { failedAttempts, readAgain } }: { signed: Signed }) {
  const times = failedAttempts === 1 ? 'once' : `${failedAttempts} times`;
  async function seen(): Promise<void> {
    await carryOut({ method: 'DELETE', path: '/session/failed-attempts' }, freshKey()).catch(() => null);
    await readAgain();
  }
  return (
    <p class="original" role="status">
      <strong>A wrong secret was entered {times} under your name.</strong> If it was not you,{' '}
      <a href="/you">change your secret</a> and tell whoever administers your operator.{' '}
      <button type="button" class="quiet" onClick={() => void seen()}>
        I have seen this
      </button>
    </p>
  );
}
