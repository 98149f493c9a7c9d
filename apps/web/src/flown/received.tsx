import type { Schemas } from '../api/client.js';
import { counted } from '../words/words.js';
import { Changed } from './changed.js';
import { endingWords, timesWords } from './leg-words.js';

type ReceivedView = Schemas['MovementsReceived'];

/** What a delivery brought, and what reads otherwise since. */
export function Received({ received }: { received: ReceivedView }) {
  const { messages, legs, tray, settled } = received;
  const known = messages.filter(({ state }) => state === 'duplicate').length;
  return (
    <section class="done-box" role="status">
      <p class="strong">
        {counted(messages.length, 'message', 'messages', 'No message')} read
        {known > 0 && `, of which ${known} had come before`}; {counted(legs.length, 'leg', 'legs', 'no leg')} written;{' '}
        {counted(tray.length, 'entry', 'entries', 'nothing')} for the tray
        {settled.length > 0 && `; ${settled.length} of the tray settled`}.
      </p>
      <ul>
        {legs.map((leg) => (
          <li key={`${leg.id}/${leg.version}`}>
            <a href={`/aircraft/${leg.aircraft}/flown`}>{leg.flight}</a> {leg.from ?? 'not known'} to{' '}
            {leg.to ?? 'not known'}: {timesWords(leg)}. {endingWords(leg.ending)}.
          </li>
        ))}
      </ul>
      <Changed items={received.items} answers={received.answers} />
    </section>
  );
}
