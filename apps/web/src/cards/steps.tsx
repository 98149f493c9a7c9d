import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Reading } from '../api/use-read.js';
import { counted } from '../words/words.js';
import { CardStep } from './card-step.js';
import type { CardView, Step } from './step-props.js';

/** What can be done now stands open; what is done and what comes later is folded away, and a touch from there. */
export function Steps({ reading, view }: { reading: Reading<CardView>; view: CardView }) {
  const { steps, ended } = view.work;
  const [chosen, setChosen] = useState<string | null>(null);
  const next = steps.find(({ state }) => state !== 'done' && state !== 'waits');
  const now = ended === null ? (chosen ?? next?.id) : undefined;
  const line = (step: Step) => (
    <CardStep
      key={step.id}
      reading={reading}
      view={view}
      step={step}
      place={steps.indexOf(step) + 1}
      open={step.id === now}
      choose={() => setChosen(step.id)}
      done={() => setChosen(null)}
    />
  );
  const done = steps.filter(({ state }) => state === 'done');
  const later = steps.filter(({ state, id }) => state === 'waits' && id !== now);
  const ready = steps.filter((step) => !done.includes(step) && !later.includes(step));
  const all = done.length === steps.length;
  return (
    <>
      <Folded count={done.length} one="step is done" many="steps are done" open={all}>
        {done.map(line)}
      </Folded>
      {ready.length > 0 && <ol class="card-steps">{ready.map(line)}</ol>}
      <Folded count={later.length} one="step comes later" many="steps come later" open={false}>
        {later.map(line)}
      </Folded>
    </>
  );
}

interface FoldedProps {
  count: number;
  one: string;
  many: string;
  open: boolean;
  children: ComponentChildren;
}

function Folded({ count, one, many, open, children }: FoldedProps) {
  if (count === 0) return null;
  return (
    <details open={open}>
      <summary>{counted(count, one, many, '')}</summary>
      <ol class="card-steps">{children}</ol>
    </details>
  );
}
