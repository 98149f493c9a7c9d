import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { counted } from '../words/words.js';
import { AddressForm } from './address-form.js';
import { AddressList } from './address-list.js';
import { FeedPart } from './feed-part.js';
import { ReminderTable } from './reminder-table.js';

/** Where reminders of what is left go, what was sent, and what could not be delivered. */
export function RemindersPage() {
  const { operator } = useSession();
  const read = useRead<Schemas['Reminders']>('/reminders');
  const back = { href: '/defects', text: 'Open items' };
  return (
    <Page title="Reminders" back={back} aside={read.value && `as of ${withOffset(read.value.at, operator.base)}`}>
      <Read of={read}>{(value) => <Content value={value} readAgain={read.readAgain} />}</Read>
    </Page>
  );
}

function Content({ value, readAgain }: { value: Schemas['Reminders']; readAgain(): Promise<void> }) {
  const { shares, sends, addresses, reminders, undelivered, mayAddForAll, more } = value;
  const inUse = addresses.filter(({ endedAt, confirmedAt }) => endedAt === null && confirmedAt !== null);
  return (
    <>
      <p>
        {shares.length === 0
          ? 'The operator has settled that nobody is reminded.'
          : `Whoever watches is reminded when this much of an interval is left: ${shares.map((share) => share.replaceAll(' ', '\u00a0')).join(', ')}.`}{' '}
        A reminder changes no deadline: rectify as soon as practicable.
      </p>
      {!sends.mail && (
        <p class="caution">This server knows no mail server: mail waits until it is started with one.</p>
      )}
      {undelivered > 0 && (
        <p class="caution">
          <span class="state heavy">Not delivered</span> {counted(undelivered, 'reminder', 'reminders', 'none')}. Look
          at the list below; tell whoever should have had it another way.
        </p>
      )}
      <h2>Where they go</h2>
      {inUse.length === 0 && (
        <p>
          <span class="state dashed">Nobody is reminded</span> No address is in use and confirmed.
        </p>
      )}
      <AddressList addresses={addresses} changed={readAgain} />
      <AddressForm mayAddForAll={mayAddForAll} inside={sends.inside} entered={readAgain} />
      <h2>What was sent</h2>
      <ReminderTable reminders={reminders} />
      {more && <p class="soft">Older ones are not shown.</p>}
      <FeedPart />
    </>
  );
}
