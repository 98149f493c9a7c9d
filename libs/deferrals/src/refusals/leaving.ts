import type { RefusalEntry } from './entry.js';

/** What is left on the aircraft: fitted once, owned always, undone and seen, handed over line by line. */
export const LEAVING_REFUSALS = {
  'fitted-already': {
    sentence: '{thing} is on the aircraft already, as {as}, and belongs to {owner}.',
    next: 'Name the place exactly if it is another one; undo the first one if it was taken off; or let it belong to both.',
    paragraph: '145.A.48',
  },
  'left-for-another-too': {
    sentence: '{thing} is needed for {owner} as well.',
    next: 'Give it over to {owner}, where it stays; it is undone with that one.',
    paragraph: '145.A.48',
  },
  'removal-not-permitted': {
    sentence: '{thing}: defect {defect} is deferred under {row}, whose (M) procedure does not let it be removed.',
    next: 'Leave the item where it is, or put it back. Take the part from elsewhere.',
    paragraph: 'ORO.MLR.105; common practice on robbery, no source',
  },
  'moved-to-itself': {
    sentence: 'It belongs to {owner} already.',
    next: 'Choose another owner.',
    paragraph: '145.A.48',
  },
  'owner-not-named': {
    sentence: 'Nothing is moved to nobody.',
    next: 'Name the open item, the modification, the directive or the permit it belongs to, or undo it.',
    paragraph: '145.A.48',
  },
  'together-only-defects': {
    sentence: 'Only two open items can need the same thing together.',
    next: 'Give it over to the document altogether.',
    paragraph: '145.A.48',
  },
  'document-over': {
    sentence: '{document} ended at {until}.',
    next: 'Undo what is altered under it, or name a document that is in force.',
    paragraph: '145.A.48; 21.A.701',
  },
  'nothing-under-document': {
    sentence: 'Nothing on this aircraft is left altered under {document}.',
    next: 'Read the register again and name the document as it stands there.',
    paragraph: '145.A.48',
  },
  'act-of-another-aircraft': {
    sentence: 'Act {act} is of aircraft {other}, not of {aircraft}.',
    next: 'Enter it for {other}.',
    paragraph: '145.A.48',
  },
  'correction-not-asked': {
    sentence: 'No correction by the number {asked} waits for a second look, or what it would correct has changed.',
    next: 'Read the register again, and ask for the correction anew if it is still wrong.',
    paragraph: '145.A.48',
  },
  'no-such-hand-over': {
    sentence: 'No hand-over by the number {given} waits to be taken.',
    next: 'Read the register again, or ask for a new hand-over.',
    paragraph: '145.A.47 (from memory)',
  },
  'same-person-taking': {
    sentence: '{name} gives the hand-over and cannot take it.',
    next: 'Ask somebody of the next shift to take over and sign.',
    paragraph: 'common practice, no source',
  },
  'changed-since-given': {
    sentence: 'The aircraft is not as it was handed over. {differing}.',
    next: 'Ask who gives it to sign a new list.',
    paragraph: '145.A.47 (from memory)',
  },
  'swap-leaves-behind': {
    sentence: 'The part of defect {defect} moves, and these would stay behind: {things}.',
    next: 'Say of each where it is now, after the swap.',
    paragraph: '145.A.48; common practice, no source',
  },
} as const satisfies Record<string, RefusalEntry>;
