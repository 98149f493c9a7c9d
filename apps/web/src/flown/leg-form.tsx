import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { Choice, Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { instantOf, NO_WALL, type WallValue, WallInput } from '../shell/wall-input.js';
import { wallIn } from '../words/time.js';
import { endingWords } from './leg-words.js';

type Leg = Schemas['LegLine'];
type Ending = Leg['ending'];

const TIMES = [
  { key: 'offBlockAt', what: 'off blocks' },
  { key: 'airborneAt', what: 'airborne' },
  { key: 'landedAt', what: 'of touch-down' },
  { key: 'onBlockAt', what: 'on blocks' },
] as const;

/** The times that each kind of leg has. */
const OF: Record<Ending, readonly (typeof TIMES)[number]['key'][]> = {
  arrived: ['offBlockAt', 'airborneAt', 'landedAt', 'onBlockAt'],
  returned: ['offBlockAt', 'airborneAt', 'landedAt', 'onBlockAt'],
  ramp: ['offBlockAt', 'onBlockAt'],
  'under-way': ['offBlockAt', 'airborneAt'],
  withdrawn: [],
};

interface LegFormProps {
  aircraft: string;
  /** Null for a new one. */
  of: Leg | null;
  done(written: Schemas['LegWritten']): void;
  readAgain(): void;
}

export function LegForm({ aircraft, of, done, readAgain }: LegFormProps) {
  const { send, sending, problem } = useAct();
  const [said, setSaid] = useState({
    flight: of?.flight ?? '',
    scheduledOn: of?.scheduledOn ?? '',
    from: of?.from ?? '',
    to: of?.to ?? '',
    reason: '',
  });
  const [ending, setEnding] = useState<Ending | null>(of?.ending ?? null);
  const [times, setTimes] = useState(() => timesOf(of));
  const [late, setLate] = useState(
    of === null ? '' : of.delays.map(({ code, minutes }) => `${code}/${minutes}`).join(', '),
  );
  const asked = ending === null ? [] : OF[ending];
  const set = (key: keyof typeof said) => (value: string) => setSaid({ ...said, [key]: value });

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const told = Object.fromEntries(
      asked.flatMap((key) => {
        const at = instantOf(times[key], 'UTC');
        return at === null ? [] : [[key, at]];
      }),
    );
    // A leg that was none keeps the times it had.
    const body = {
      ...said,
      to: said.to === '' ? undefined : said.to,
      ending,
      ...(ending === 'withdrawn' ? { offBlockAt: of?.offBlockAt } : told),
      delays: delaysIn(late),
    };
    const path = of === null ? `/aircraft/${aircraft}/legs` : `/aircraft/${aircraft}/legs/${of.id}`;
    const seen = of === null ? null : `"${of.version}"`;
    const answer = await send<Schemas['LegWritten']>({ method: of === null ? 'POST' : 'PUT', path, body, seen });
    if (answer !== null) done(answer.body);
  }

  const endings: Ending[] = [
    'arrived',
    'returned',
    'ramp',
    'under-way',
    ...(of === null ? [] : ['withdrawn' as const]),
  ];
  return (
    <form onSubmit={(event) => void submit(event)}>
      <FieldErrors.Provider value={problem?.errors ?? []}>
        <Field label="Flight number" value={said.flight} onValue={set('flight')} pointer="/flight" required short />
        <Field
          label="Scheduled UTC day of the flight"
          type="date"
          value={said.scheduledOn}
          onValue={set('scheduledOn')}
          pointer="/scheduledOn"
          required
          short
        />
        <div class="pair">
          <Field label="From" hint="Station" value={said.from} onValue={set('from')} pointer="/from" required short />
          <Field label="To" hint="Station" value={said.to} onValue={set('to')} pointer="/to" short />
        </div>
        <Choice
          legend="How it ended"
          options={endings.map((value) => ({ value, text: endingWords(value) }))}
          value={ending}
          onValue={setEnding}
        />
        {TIMES.filter(({ key }) => asked.includes(key)).map(({ key, what }) => (
          <WallInput
            key={key}
            what={`${what}, UTC`}
            zone="UTC"
            value={times[key]}
            onValue={(value) => setTimes({ ...times, [key]: value })}
            pointer={`/${key}`}
            required={!(ending === 'under-way' && key === 'airborneAt')}
          />
        ))}
        <Field
          label="Reasons of a late departure"
          hint="Two digits and minutes, such as 41/25; several with commas"
          value={late}
          onValue={setLate}
          pointer="/delays"
          short
        />
        <Field
          label={of === null ? 'Why it is entered by hand' : 'Why it is corrected'}
          lines={2}
          most={1000}
          value={said.reason}
          onValue={set('reason')}
          pointer="/reason"
          required
        />
      </FieldErrors.Provider>
      <p class="hint">What you enter stands until a person changes it. What stood before stays readable.</p>
      <ProblemBox problem={problem} readAgain={readAgain} />
      <div class="buttons">
        <button class="main" disabled={sending}>
          {of === null ? 'Enter it' : 'Correct it'}
        </button>
      </div>
    </form>
  );
}

type Times = Record<(typeof TIMES)[number]['key'], WallValue>;

function timesOf(of: Leg | null): Times {
  const wall = (at: string | null | undefined): WallValue => {
    if (at === null || at === undefined) return NO_WALL;
    const { year, month, day, hour, minute } = wallIn('UTC', at);
    return { date: `${year}-${month}-${day}`, time: `${hour}:${minute}`, which: null };
  };
  return {
    offBlockAt: wall(of?.offBlockAt),
    airborneAt: wall(of?.airborneAt),
    landedAt: wall(of?.landedAt),
    onBlockAt: wall(of?.onBlockAt),
  };
}

/** `41/25, 93/10`; what does not read so is sent as it is, and the server says what is wrong with it. */
function delaysIn(text: string): { code: string; minutes: number | string }[] {
  return text
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '')
    .map((one) => {
      const [code = '', minutes = ''] = one.split('/').map((part) => part.trim());
      return { code, minutes: /^\d+$/.test(minutes) ? Number(minutes) : minutes };
    });
}
