import type { Scale } from './time-line-scale.js';

/** What the shapes of the lines mean, in words, and how long the lines are. */
export function TimeLineKey({ scale }: { scale: Scale }) {
  return (
    <p class="soft time-key">
      Each line begins now and is {scale.days} days long; a tick is a day. <KeyShape d="M2 3h8v10h-8z" full /> fixed
      end, <KeyShape d="M6 2l6 6l-6 6l-6 -6z" /> projected end, <KeyShape d="M2 2l9 6l-9 6z" /> later than the line,{' '}
      <KeyShape d="M1 3l10 10m0 -10l-10 10" /> over. What is projected is a forecast from the planned flights and the
      mean use; it moves no deadline.
    </p>
  );
}

function KeyShape({ d, full = false }: { d: string; full?: boolean }) {
  return (
    <svg class="time-key-shape" viewBox="-1 0 14 16" aria-hidden="true">
      <path class={full ? 'time-mark full' : 'time-mark'} d={d} />
    </svg>
  );
}
