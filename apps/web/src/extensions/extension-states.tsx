import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { Said } from '../shell/said.js';
import { calendarDayText, withOffset } from '../words/time.js';

type Line = Schemas['ExtensionLine'];

const SHAPES: Record<Line['state'], string> = {
  asked: 'dashed',
  granted: '',
  declined: 'bare',
  withdrawn: 'bare',
  replaced: 'bare',
};
const NOTICE_SHAPES: Record<Schemas['NoticeLine']['state'], string> = {
  none: 'bare',
  due: 'dashed',
  overdue: 'heavy',
  sent: '',
  acknowledged: 'bare',
};
const NOTICE_WORDS: Record<Schemas['NoticeLine']['state'], string> = {
  none: 'No notice asked for',
  due: 'Notice due',
  overdue: 'Notice OVERDUE',
  sent: 'Notice sent',
  acknowledged: 'Notice acknowledged',
};

/** Where an extension stands, by word and by shape. */
export function ExtensionState({ line }: { line: Line }) {
  return (
    <p>
      <span class={`state ${SHAPES[line.state]}`}>{line.state}</span>
      {line.words !== line.state && (
        <>
          {' '}
          <Said text={line.words} />
        </>
      )}
      {line.lastDay && line.lastDayBefore && (
        <>
          {' '}
          to {calendarDayText(line.lastDay)}, from {calendarDayText(line.lastDayBefore)}
        </>
      )}
      {line.decided && `, by ${line.decided.by}`}
    </p>
  );
}

/** Where its notice to the authority stands; one that is overdue stands out by its word and its thick edge. */
export function NoticeState({ notice }: { notice: Schemas['NoticeLine'] }) {
  return (
    <p>
      <span class={`state ${NOTICE_SHAPES[notice.state]}`}>{NOTICE_WORDS[notice.state]}</span>{' '}
      <Said text={notice.words} />
    </p>
  );
}

/** What was asked for, and by whom. */
export function Asked({ asked }: { asked: Line['asked'] }) {
  const { operator } = useSession();
  return (
    <>
      <p>
        Asked by {asked.by} {withOffset(asked.at, operator.base)}
      </p>
      <Told what="Reason" text={asked.reason} />
      <Told what="Why not rectified in time" text={asked.whyNotFixed} />
      <Told what="Plan" text={asked.plan} />
      <Told what="Parts" text={asked.parts} />
      <Told what="Agreement of the authority" text={asked.agreement} />
    </>
  );
}

function Told({ what, text }: { what: string; text: string | null }) {
  if (text === null) return null;
  return (
    <p>
      <span class="strong">{what}:</span> {text}
    </p>
  );
}
