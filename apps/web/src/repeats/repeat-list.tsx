import type { Schemas } from '../api/client.js';
import { shortName } from '../item/work-address.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';
import { counted } from '../words/words.js';
import { nextOfEach, type Owed } from './next-of-each.js';

type Repeat = Schemas['RepeatLine'];

/** What stands before a state, so that it is told apart without colour. */
const SHAPES: Record<Repeat['state'], string> = { done: '✓', missed: '✗', 'not-known': '?', due: '▸', coming: '·' };

/** Where a departure is or was. */
export function departureWords({ flight }: Repeat, base: string): string {
  if (flight === null) return '';
  const where = [flight.number ?? 'a flight', flight.from && `from ${flight.from}`].filter(Boolean).join(' ');
  return `${where}, off blocks ${withOffset(flight.offBlockAt, base)}`;
}

/** The state of one time that work is owed, in words after a shape. */
export function RepeatState({ repeat: { state, words } }: { repeat: Repeat }) {
  return (
    <span class="strong">
      <span aria-hidden="true">{SHAPES[state]} </span>
      {words}
    </span>
  );
}

/** When, by whom, before which flight, and how often the aircraft left without it. */
export function RepeatWords({ repeat }: { repeat: Repeat }) {
  const { base } = useSession().operator;
  const { state, done, because, departures } = repeat;
  const where = departureWords(repeat, base);
  if (done !== null) {
    return (
      <>
        {withOffset(done.doneAt, base)} by {done.by}
        {where && <span class="soft block">good from {where}</span>}
        {done.lateReason && <span class="soft block">Entered after the aircraft left: {done.lateReason}</span>}
      </>
    );
  }
  const times = departures > 1 ? `, ${departures} departures` : '';
  return (
    <>
      {state === 'due' && where && `before ${where}`}
      {(state === 'missed' || state === 'not-known') && `${where}${times}`}
      <span class="soft block">{because}</span>
    </>
  );
}

/** How often the same work comes after the time shown. */
export function MoreTimes({ more }: { more: number }) {
  if (more === 0) return null;
  return <span class="soft block">and {counted(more, 'more time', 'more times', '')} as planned</span>;
}

const MOST_DONE = 5;

/** Work of one item that comes again: what was missed and what is due first, then when it was done. */
export function RepeatList({ repeats }: { repeats: readonly Repeat[] }) {
  const open = repeats.filter(({ state }) => state !== 'done');
  const done = repeats.filter(({ state }) => state === 'done').toReversed();
  return (
    <section>
      <h2>Work owed again and again</h2>
      <Lines owed={nextOfEach(open)} />
      <Lines owed={nextOfEach(done.slice(0, MOST_DONE))} />
      {done.length > MOST_DONE && (
        <details>
          <summary>{done.length - MOST_DONE} more times done</summary>
          <Lines owed={nextOfEach(done.slice(MOST_DONE))} />
        </details>
      )}
    </section>
  );
}

function Lines({ owed }: { owed: readonly Owed<Repeat>[] }) {
  if (owed.length === 0) return null;
  return (
    <ul class="plain-list">
      {owed.map(({ line, more }, index) => (
        <li key={`${line.work} ${index}`}>
          <RepeatState repeat={line} /> {shortName(line.work)}: <RepeatWords repeat={line} />
          <MoreTimes more={more} />
        </li>
      ))}
    </ul>
  );
}
