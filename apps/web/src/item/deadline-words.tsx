import type { Schemas } from '../api/client.js';
import { lastMinuteBefore, utcBeside } from '../words/time.js';

/** What is left in words, and the same end in UTC. */
export function DeadlineWords({ deadline }: { deadline: Schemas['DeadlineLine'] }) {
  const { words, endsAt, over, base } = deadline;
  return (
    <span class={over ? 'strong' : undefined}>
      {over ? `Over: ${words}` : words}
      {endsAt && base !== 'UTC' && <span class="soft"> = {utcBeside(lastMinuteBefore(endsAt), base)}</span>}
    </span>
  );
}
