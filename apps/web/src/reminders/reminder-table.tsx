import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { Cell } from '../shell/cell.js';
import { withOffset } from '../words/time.js';

type Line = Schemas['Reminder'];

const SHAPES: Record<Line['state'], string> = {
  waiting: 'dashed',
  sent: 'bare',
  'not delivered': 'heavy',
  refused: 'heavy',
  'passed over': 'bare',
  dropped: 'bare',
};

const WORDS: Record<Line['state'], string> = {
  waiting: 'Waiting',
  sent: 'Sent',
  'not delivered': 'Not delivered',
  refused: 'Refused',
  'passed over': 'Passed over',
  dropped: 'No longer sent',
};

/** Each reminder with how it stands: words, in a frame whose shape says the same. */
export function ReminderTable({ reminders }: { reminders: Line[] }) {
  if (reminders.length === 0) return <p>Nothing yet.</p>;
  return (
    <table class="stack">
      <thead>
        <tr>
          <th scope="col">Item</th>
          <th scope="col">Reminder</th>
          <th scope="col">To</th>
          <th scope="col">Stands</th>
        </tr>
      </thead>
      <tbody>
        {reminders.map((one) => (
          <ReminderRow key={one.id} of={one} />
        ))}
      </tbody>
    </table>
  );
}

function ReminderRow({ of }: { of: Line }) {
  const { operator } = useSession();
  const { defect, number, title, share, left, noticedAt, to, state, words, sentAt, nextAt } = of;
  return (
    <tr>
      <th scope="row">
        {defect === null ? (
          <a href="/record/keeping">{title}</a>
        ) : (
          <>
            <a class="registration" href={`/defects/${defect}`}>
              {number}
            </a>
            <span class="soft block">{title}</span>
          </>
        )}
      </th>
      <Cell head="Reminder">
        {defect === null ? 'Passed' : share === 0 ? 'At the end' : `At ${share} %`},{' '}
        {withOffset(noticedAt, operator.base)}
        <span class="soft block">{left}</span>
      </Cell>
      <Cell head="To">
        <span class="breakable">{to}</span>
      </Cell>
      <Cell head="Stands">
        <span class={`state ${SHAPES[state]}`}>{WORDS[state]}</span>
        <span class="block">{words}</span>
        {sentAt && <span class="soft block">{withOffset(sentAt, operator.base)}</span>}
        {state === 'not delivered' && nextAt && (
          <span class="soft block">Next attempt {withOffset(nextAt, operator.base)}</span>
        )}
      </Cell>
    </tr>
  );
}
