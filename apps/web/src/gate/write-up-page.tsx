import { useLocation, useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { serverNow } from '../api/server-clock.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { waitsUntilAnswered } from '../item/waits-until-answered.js';
import { useSession } from '../session/session.js';
import { carryOver } from '../shell/announce.js';
import { Choice, Field, FieldErrors } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { ProblemBox } from '../shell/problem-box.js';
import { instantOf } from '../shell/wall-input.js';
import { sentWithOffset } from '../words/time.js';
import { LogTime, type LogTimes, NOW } from './log-time.js';
import { WhenFound, type WhenFoundOrNot } from './when-found.js';

type Origin = 'technician' | 'crew' | 'cabin';

const ORIGINS = [
  { value: 'technician', text: 'Technician' },
  { value: 'crew', text: 'Flight crew' },
  { value: 'cabin', text: 'Cabin' },
] as const;

/** Writes a defect in the log. Few fields; the time is now, unless a paper sheet says otherwise. */
export function WriteUpPage() {
  const { id = '' } = useRoute().params;
  const { route } = useLocation();
  const { operator, roles } = useSession();
  const aircraft = useRead<Schemas['AircraftView']>(`/aircraft/${id}`);
  const name = aircraft.value?.registration ?? 'The aircraft';
  const [description, setDescription] = useState('');
  const [faultMessage, setFaultMessage] = useState('');
  const [sheet, setSheet] = useState('');
  const [origin, setOrigin] = useState<Origin>(roles.includes('technician') ? 'technician' : 'crew');
  const [times, setTimes] = useState<LogTimes>(NOW);
  const [whenFound, setWhenFound] = useState<WhenFoundOrNot>('not-said');
  const { send, sending, problem } = useAct();

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const body = {
      aircraft: id,
      origin,
      description,
      ...timesSent(times, operator.base),
      ...given({ faultMessage, sheet }),
      ...(whenFound === 'not-said' ? {} : { whenFound }),
    };
    const answer = await send<Schemas['ActDone']>({ method: 'POST', path: '/defects', body });
    if (!answer) return;
    const { number, id: defect, onItsFlight } = answer.body.defect;
    const thatFlight = onItsFlight ? [onItsFlight.words, onItsFlight.caution] : [];
    carryOver({
      title: `Written up as ${number}.`,
      lines: [...thatFlight, waitsUntilAnswered(answer.body.defect)],
    });
    route(roles.includes('technician') ? `/defects/${defect}/entries` : `/defects/${defect}`);
  }

  return (
    <Page
      title="Write up a defect"
      aside={aircraft.value?.registration}
      back={{ href: `/aircraft/${id}`, text: name }}
    >
      <form onSubmit={submit}>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <Field
            label="What is wrong"
            hint="What was seen, heard or measured, and where"
            lines={3}
            most={4000}
            value={description}
            onValue={setDescription}
            pointer="/description"
            required
          />
          <Field
            label="Message the aircraft showed"
            value={faultMessage}
            onValue={setFaultMessage}
            pointer="/faultMessage"
          />
          <Field label="Log sheet number" most={40} value={sheet} onValue={setSheet} pointer="/sheet" short />
          <Choice legend="Found by" options={ORIGINS} value={origin} onValue={setOrigin} />
          <WhenFound value={whenFound} onValue={setWhenFound} />
          <LogTime times={times} onTimes={setTimes} zone={operator.base} />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            {sending ? 'Sending…' : 'Write it up'}
          </button>
        </div>
      </form>
    </Page>
  );
}

function timesSent({ earlier, recorded, occurred, reason }: LogTimes, zone: string) {
  if (!earlier) return { recordedAt: sentWithOffset(serverNow(), zone) };
  const occurredAt = instantOf(occurred, zone);
  return {
    recordedAt: instantOf(recorded, zone) ?? '',
    ...(occurredAt === null ? {} : { occurredAt }),
    ...given({ lateReason: reason }),
  };
}

/** Only what was filled in. */
function given<T extends Record<string, string>>(fields: T): Partial<T> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value.trim() !== '')) as Partial<T>;
}
