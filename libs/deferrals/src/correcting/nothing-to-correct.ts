/** What was to be corrected does not stand where it was looked for, said as a reader of the history calls it. */
import type { Act } from '../acts.js';
import { Refusal } from '../refusal.js';

interface Nothing {
  /** Where it was looked for. */
  entry: string;
  /** What it is called. */
  words: string;
  /** What it was said to read, null for empty; absent where such a thing does not stand there at all. */
  was?: string | null;
}

export function nothingToCorrect({ entry, words, was }: Nothing): Refusal {
  const no = was === undefined ? 'does not stand' : was === null ? 'is not empty' : `does not read "${was}"`;
  return new Refusal('correction-of-nothing', { entry, what: `${words} ${no}` });
}

export function entryInWords(act: Act | undefined, defect: string): string {
  return act === undefined
    ? `the history of defect ${defect}, where no such entry is`
    : `${ENTRY_WORDS[act.kind]}, entered ${act.enteredAt} for defect ${defect}`;
}

const ENTRY_WORDS: Readonly<Record<Act['kind'], string>> = {
  'written-up': 'the write-up',
  identified: 'what was found to have failed',
  deferred: 'the deferral',
  'procedure-signed': 'the work of a procedure',
  'placard-fitted': 'the placard that was fitted',
  'placard-removed': 'the placard that was removed',
  'left-on-the-aircraft': 'what was left on the aircraft',
  undone: 'what was undone',
  'row-changed': 'the change of the row',
  extended: 'the extension',
  'authority-granted': 'the document of the authority',
  transferred: 'the part that was moved',
  're-entered': 'the entry on a new sheet',
  'handed-over': 'the hand-over',
  rectification: 'the work done',
  tested: 'the test',
  inspected: 'the inspection',
  restored: 'the normal configuration restored',
  released: 'the release',
  'no-fault-found': 'the finding of no fault',
  'raised-in-error': 'the answer that it was raised in error',
  'reset-and-watch': 'the reset',
  corrected: 'a correction',
  'correction-asked': 'a correction that was asked for',
  'stays-as-written': 'the answer that it stays as written',
  'card-started': 'the start of a card',
  'card-stepped': 'a step of a card',
  'card-inspected': 'the inspection of a step',
  'card-signed': 'a card that was signed',
  'card-stopped': 'a card that was stopped',
  'taken-over': 'what was taken over',
  'given-over': 'what was given over',
  'generally-verified': 'the general verification',
  joined: 'the answer that it goes on elsewhere',
};
