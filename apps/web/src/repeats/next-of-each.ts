import type { Schemas } from '../api/client.js';

type Repeat = Schemas['RepeatLine'] & { defect?: string };

export interface Owed<Line> {
  line: Line;
  /** How many more times the same work is due before flights planned. */
  more: number;
}

/** Of what is due again and again only the next time, with how often it comes after that; the rest as it stands. */
export function nextOfEach<Line extends Repeat>(lines: readonly Line[]): Owed<Line>[] {
  const due = new Map<string, Owed<Line>>();
  return lines.flatMap((line): Owed<Line>[] => {
    const owed = { line, more: 0 };
    if (line.state !== 'due') return [owed];
    const key = `${line.defect ?? ''} ${line.work}`;
    const before = due.get(key);
    if (before) before.more += 1;
    else due.set(key, owed);
    return before ? [] : [owed];
  });
}
