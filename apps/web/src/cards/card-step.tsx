import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';
import { Cautions } from './cautions.js';
import { InspectionForm } from './inspection-form.js';
import { StepForm } from './step-form.js';
import { type StepProps, stepsInWords } from './step-props.js';

const STATES: Record<string, string> = { begun: 'begun', ran: 'run ended, look now', next: 'to do' };

/** One step: what is asked, how it stands, and its form while it is the one worked on. */
export function CardStep(props: StepProps & { place: number; open: boolean; choose(): void }) {
  const { view, step, place, open, choose } = props;
  const { operator } = useSession();
  const { done, waitsFor, needs, licence, takes } = step;
  return (
    <li value={place} class={open ? 'now' : undefined}>
      <p>
        <span class={done ? 'soft' : 'strong'}>{step.text}</span>{' '}
        <span class="soft">
          {done
            ? `${done.words}: ${done.by}${done.second === null ? '' : ` with ${done.second}`}${done.used.map((one) => `, by ${one}`).join('')}, ${withOffset(done.at, operator.base)}`
            : waitsFor.length > 0
              ? `waits for ${stepsInWords(view.work.steps, waitsFor)}`
              : STATES[step.state]}
        </span>
      </p>
      {!done && (needs.length > 0 || licence.length > 0 || takes !== null) && (
        <p class="soft">
          {[
            ...needs.map(({ what }) => what),
            ...(licence.length > 0 ? [`licence ${licence.join(' or ')}`] : []),
            ...(takes === null ? [] : [`${takes} min`]),
          ].join('; ')}
        </p>
      )}
      {!done && <Cautions cautions={step.cautions} />}
      {open && (step.kind === 'inspect' ? <InspectionForm {...props} /> : <StepForm {...props} />)}
      {!open && !done && (
        <button type="button" onClick={choose}>
          Go to this step
        </button>
      )}
    </li>
  );
}
