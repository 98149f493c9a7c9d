import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { SignForm } from '../acts/sign-form.js';
import { Choice, Field } from '../shell/fields.js';
import { instantOf, NO_WALL, type WallValue, WallInput } from '../shell/wall-input.js';
import { wallIn } from '../words/time.js';
import { hoursText, minutesIn } from './hours.js';

type Count = Schemas['EngineCountLine'];

interface EngineFormProps {
  aircraft: string;
  /** Null for a new statement; else the one that is corrected. */
  of: Count | null;
  done(written: Schemas['EngineCounted']): void;
  readAgain(): void;
}

const KINDS = [
  { value: 'reading', text: 'What its counters read' },
  { value: 'run', text: 'A run or a start that no leg tells' },
] as const;

type Kind = (typeof KINDS)[number]['value'];

/** A signed statement of one engine. Hours are typed as 74020:30, so that nothing is lost to decimals. */
export function EngineForm({ aircraft, of, done, readAgain }: EngineFormProps) {
  const [kind, setKind] = useState<Kind | null>(of === null || of.kind === 'withdrawn' ? null : of.kind);
  const [said, setSaid] = useState({
    position: of?.position ?? '',
    serial: of?.serial ?? '',
    hours: of === null ? '' : hoursText(of.minutes),
    cycles: of === null ? '' : String(of.cycles),
    reason: '',
  });
  const [at, setAt] = useState<WallValue>(() => (of === null ? NO_WALL : wallOf(of.at)));
  const set = (key: keyof typeof said) => (value: string) => setSaid({ ...said, [key]: value });
  const path = of === null ? `/aircraft/${aircraft}/engines` : `/aircraft/${aircraft}/engines/${of.id}`;
  const body = () => ({
    kind,
    position: said.position,
    ...(said.serial === '' ? {} : { serial: said.serial }),
    at: instantOf(at, 'UTC'),
    minutes: minutesIn(said.hours) ?? said.hours,
    cycles: /^\d+$/.test(said.cycles) ? Number(said.cycles) : said.cycles,
    reason: said.reason,
  });
  return (
    <section class="card">
      <h2>{of === null ? 'State the counters of an engine' : 'Correct what was stated'}</h2>
      <SignForm<Schemas['EngineCounted']>
        statementPath={kind === null ? null : `/aircraft/${aircraft}/engines/statement?act=${kind}`}
        path={path}
        method={of === null ? 'POST' : 'PUT'}
        seen={of === null ? null : `"${of.version}"`}
        body={body}
        button={of === null ? 'Sign: state it' : 'Sign: correct it'}
        done={(written) => {
          if (of === null) setSaid({ ...said, hours: '', cycles: '', reason: '' });
          done(written);
        }}
        readAgain={readAgain}
      >
        <Choice legend="What you state" options={KINDS} value={kind} onValue={setKind} />
        {kind !== null && (
          <>
            <div class="pair">
              <Field
                label="Engine"
                hint="Its position, as the MEL names the unit"
                value={said.position}
                onValue={set('position')}
                pointer="/position"
                required
                short
              />
              <Field
                label="Serial number"
                value={said.serial}
                onValue={set('serial')}
                pointer="/serial"
                required={kind === 'reading'}
                short
              />
            </div>
            <WallInput
              what={kind === 'reading' ? 'it read so, UTC' : 'of the run, UTC'}
              zone="UTC"
              value={at}
              onValue={setAt}
              pointer="/at"
            />
            <div class="pair">
              <Field
                label={kind === 'reading' ? 'Hours on the counter' : 'Hours of the run'}
                hint="Hours and minutes, such as 74020:30"
                value={said.hours}
                onValue={set('hours')}
                pointer="/minutes"
                required
                short
              />
              <Field
                label={kind === 'reading' ? 'Cycles on the counter' : 'Cycles of the run'}
                value={said.cycles}
                onValue={set('cycles')}
                pointer="/cycles"
                inputMode="numeric"
                required
                short
              />
            </div>
            <Field
              label={of === null ? 'Where it is known from' : 'Why it is corrected'}
              most={1000}
              value={said.reason}
              onValue={set('reason')}
              pointer="/reason"
              required
            />
          </>
        )}
      </SignForm>
    </section>
  );
}

function wallOf(at: string): WallValue {
  const { year, month, day, hour, minute } = wallIn('UTC', at);
  return { date: `${year}-${month}-${day}`, time: `${hour}:${minute}`, which: null };
}
