import type { Schemas } from '../api/client.js';
import { counted } from '../words/words.js';

type View = Schemas['DefectView'];

interface Step {
  address: string;
  text: string;
  /** What to press. */
  press: string;
  done: boolean;
}

/** From the work to the release, in the order it is done; the first open step is the one to press. */
export function OpenWorkSteps({ view, work }: { view: View; work: NonNullable<View['openWork']> }) {
  const steps = stepsOf(view, work);
  const next = steps.find(({ done }) => !done);
  return (
    <section>
      <h2>Before it is released</h2>
      <ol class="checklist">
        {steps.map((step) => (
          <li key={step.address}>
            <span class={`truth ${step.done ? 'holds' : 'to-do'}`}>{step.done ? 'done' : 'to do'}</span>
            <span>{step.text}</span>
            {(!step.done || step.address === 'rectification') && (
              <a class={`button ${step === next ? 'main' : ''}`} href={`/defects/${view.defect.id}/${step.address}`}>
                {step.press}
              </a>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}

function stepsOf({ left }: View, work: NonNullable<View['openWork']>): Step[] {
  const leftWords = counted(left.length, 'thing is', 'things are', 'Nothing is');
  const steps: (Step | false)[] = [
    {
      address: 'rectification',
      text: work.complete ? 'The work is complete.' : 'Something of the work is still to be done.',
      press: 'More work',
      done: work.complete,
    },
    {
      address: 'undone',
      text: `${leftWords} left on the aircraft for it.`,
      press: 'Undo',
      done: left.length === 0,
    },
    work.testAsked && {
      address: 'test',
      text: work.tested === 'not-good' ? 'The last test was not good.' : 'A test after the work.',
      press: 'Test',
      done: work.tested === 'good',
    },
    work.restorationOwed && {
      address: 'restoration',
      text: 'Back in its normal configuration.',
      press: 'Restore',
      done: work.restored,
    },
    {
      address: 'verification',
      text: 'Gone over: tools, panels, register.',
      press: 'Go over',
      done: work.verified,
    },
    work.inspectionAsked && {
      address: 'inspection',
      text: 'An independent inspection by another person.',
      press: 'Inspect',
      done: work.inspected,
    },
    { address: 'release', text: 'Release to service.', press: 'Release', done: false },
  ];
  return steps.filter((step) => step !== false);
}
