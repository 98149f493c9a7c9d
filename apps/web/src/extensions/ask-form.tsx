import { useState } from 'preact/hooks';
import { useAct } from '../api/use-act.js';
import { FieldErrors, Field, Tick } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';

interface AskFormProps {
  defect: string;
  seen: string | null;
  asked(): void;
  readAgain(): void;
}

const EMPTY = { reason: '', whyNotFixed: '', plan: '', parts: '', days: '', agreement: '' };

/** Asks for an extension. It moves nothing until another person grants it. */
export function AskForm({ defect, seen, asked, readAgain }: AskFormProps) {
  const [told, setTold] = useState(EMPTY);
  const [outside, setOutside] = useState(false);
  const { send, sending, problem } = useAct();
  const field = (key: keyof typeof EMPTY) => ({
    value: told[key],
    onValue: (value: string) => setTold({ ...told, [key]: value }),
    pointer: `/${key}`,
  });

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const { parts, days, agreement, ...said } = told;
    const body = {
      ...said,
      outsideOperatorsControl: outside,
      ...(parts === '' ? {} : { parts }),
      ...(agreement === '' ? {} : { agreement }),
      ...(days === '' ? {} : { days: Number(days) }),
    };
    if (await send({ method: 'POST', path: `/defects/${defect}/extension-request`, body, seen })) asked();
  }

  return (
    <form class="card" onSubmit={submit} aria-label="Ask for an extension">
      <h2>Ask for an extension</h2>
      <FieldErrors.Provider value={problem?.errors ?? []}>
        <Field label="Reason" lines={2} most={1000} required {...field('reason')} />
        <Tick label="The reason lies outside the operator's control" ticked={outside} onTick={setOutside} />
        <Field label="Why it was not rectified in time" lines={2} most={1000} required {...field('whyNotFixed')} />
        <Field
          label="Plan to rectify it"
          hint="When, where, by whom"
          lines={2}
          most={1000}
          required
          {...field('plan')}
        />
        <Field label="Parts waited for, with their orders" most={400} {...field('parts')} />
        <Field
          label="Calendar days"
          hint="Left empty: the longest that is allowed"
          inputMode="numeric"
          most={3}
          short
          {...field('days')}
        />
        <Field label="Reference of the authority's agreement" most={200} {...field('agreement')} />
      </FieldErrors.Provider>
      <ProblemBox problem={problem} readAgain={readAgain} />
      <div class="buttons">
        <button class="main" disabled={sending}>
          Ask for it
        </button>
      </div>
    </form>
  );
}
