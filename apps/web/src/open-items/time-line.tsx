import type { Schemas } from '../api/client.js';
import { fromNow, type Mark, markAt, type Scale, ticksOf } from './time-line-scale.js';

const WIDTH = 240;
const HEIGHT = 26;
const LEFT = 8;
const LINE = 14;

/** The ends that are drawn: the fixed one and the projected one, each where there is one. */
export function endsOf(deadline: Schemas['DeadlineLine'] | null): { fixed: string | null; projected: string | null } {
  return { fixed: deadline?.endsAt ?? null, projected: deadline?.projected?.endsAt ?? null };
}

/**
 * One item on the line of time: what the words beside it say, drawn. A square stands for an end that is fixed, an open
 * diamond for one that is projected, an arrow for one after the end of the line, a cross for one that is over.
 */
export function TimeLine({ deadline, scale }: { deadline: Schemas['DeadlineLine']; scale: Scale }) {
  const { fixed, projected } = endsOf(deadline);
  if (fixed === null && projected === null) return null;
  const marks = [
    ...(fixed === null ? [] : [markAt(scale, fixed, 'fixed')]),
    ...(projected === null ? [] : [markAt(scale, projected, 'projected')]),
  ];
  const words = [
    ...(fixed === null ? [] : [`fixed end: ${fromNow(scale, fixed)} from now`]),
    ...(projected === null ? [] : [`projected end: ${fromNow(scale, projected)} from now`]),
  ];
  return (
    <svg
      class="time-line"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Line of ${scale.days} days: ${words.join('; ')}`}
    >
      <path class="time-axis" d={`M${LEFT} ${LINE}H${WIDTH - LEFT}`} />
      {ticksOf(scale).map((at) => (
        <path key={at} class="time-axis" d={`M${x(at)} ${LINE - 3}v6`} />
      ))}
      <path class="time-now" d={`M${LEFT} 4v20`} />
      {marks.map((mark) => (
        <MarkShape key={mark.kind} mark={mark} />
      ))}
    </svg>
  );
}

function MarkShape({ mark }: { mark: Mark }) {
  const at = x(mark.at);
  const line = <path class={mark.kind === 'fixed' ? 'time-run' : 'time-run dashed'} d={`M${LEFT} ${LINE}H${at}`} />;
  return (
    <>
      {line}
      <path class={mark.kind === 'fixed' && !mark.over ? 'time-mark full' : 'time-mark'} d={shapeOf(mark, at)} />
    </>
  );
}

function shapeOf({ kind, beyond, over }: Mark, at: number): string {
  if (over) return `M${at - 5} ${LINE - 5}l10 10m0 -10l-10 10`;
  if (beyond) return `M${at - 7} ${LINE - 6}l7 6l-7 6z`;
  if (kind === 'fixed') return `M${at - 4} ${LINE - 5}h8v10h-8z`;
  return `M${at} ${LINE - 6}l6 6l-6 6l-6 -6z`;
}

function x(share: number): number {
  return Math.round((LEFT + share * (WIDTH - 2 * LEFT)) * 10) / 10;
}
