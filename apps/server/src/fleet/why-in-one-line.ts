import type { Verdict } from '#dispatch';

type Decided = Pick<Verdict, 'verdict' | 'reasons' | 'words' | 'work' | 'workMinutes'>;

const MOST_WORK = 2;

/** The deciding reason for a list: for an aircraft that waits for work, what is to be done, without its steps. */
export function whyInOneLine({ verdict, reasons, words, work, workMinutes }: Decided): string {
  if (verdict !== 'after-work' || work.length === 0) return reasons[0] ?? words;
  const things = work.length === 1 ? '1 thing' : `${work.length} things`;
  const time = workMinutes ? `, ${workMinutes} min` : '';
  const more = work.length - MOST_WORK;
  const first = work.slice(0, MOST_WORK).map(({ text }) => firstSentence(text));
  return `${things} to do${time}: ${first.join('; ')}${more > 0 ? `; and ${more} more` : ''}.`;
}

function firstSentence(text: string): string {
  return (/^.+?(?=[.!?](\s|$))/.exec(text)?.[0] ?? text).trim();
}
