import type { RefusalEntry } from './entry.js';

/** Rectifying, testing, inspecting, releasing, and putting right what was written. */
export const RELEASING_REFUSALS = {
  'no-open-work': {
    sentence: 'There is no open work on defect {defect}.',
    next: 'Enter the rectification first.',
    paragraph: '145.A.50(a)',
  },
  'open-work': {
    sentence: 'Work on defect {defect} was begun at {openedAt} and is not released.',
    next: 'Finish and release that work first.',
    paragraph: '145.A.50(a)',
  },
  'work-not-complete': {
    sentence: 'The work on defect {defect} is not complete: {missing}.',
    next: 'Complete it, or release it as work that stays open and say what does.',
    paragraph: '145.A.50(a)(e)',
  },
  'stopped-card-not-said': {
    sentence:
      'Work cards of defect {defect} were stopped half-worked, and what stays open does not name them: {cards}.',
    next: 'Add a line for each that names the card and what of it is not done: {cards}.',
    paragraph: '145.A.50(e)',
  },
  'test-not-good': {
    sentence: 'No good test follows the last work on defect {defect}.',
    next: 'Test it and enter the result.',
    paragraph: '145.A.50(a)',
  },
  'not-restored': {
    sentence:
      'Things were altered for the deferral of defect {defect}, and nobody signed that all is back to normal.',
    next: 'Restore the system and sign it.',
    paragraph: '145.A.48; 145.A.50(a)',
  },
  'still-left-on-the-aircraft': {
    sentence: 'Still left on the aircraft under defect {defect}: {things}.',
    next: 'Undo each of them and sign it: {things}.',
    paragraph: '145.A.48; 145.A.50(a)',
  },
  'inspection-not-done': {
    sentence: 'An independent inspection was asked for and none follows the last work on defect {defect}.',
    next: 'Ask a second qualified person to inspect and sign.',
    paragraph: '145.A.48; 14 CFR 121.371(c)',
  },
  'inspection-on-the-list': {
    sentence:
      'The operator has {line} on its list for independent inspection, and none follows the work on defect {defect}.',
    next: 'Ask a second qualified person to inspect and sign.',
    paragraph: '145.A.48; 14 CFR 121.371; operator setting',
  },
  'own-inspection-never': {
    sentence:
      '{name} did the work on defect {defect} and under the rules in force never inspects it, whatever the reason.',
    next: 'Ask a second qualified person to inspect and sign.',
    paragraph: '14 CFR 121.371(c); operator setting',
  },
  'not-generally-verified': {
    sentence: 'After the last work on defect {defect} nobody has signed: {missing}.',
    next: 'Go over the aircraft, then sign the general verification.',
    paragraph: '145.A.48(a)',
  },
  'tools-not-returned': {
    sentence: 'Tools issued for defect {defect} are not returned: {tools}.',
    next: 'Find each, and sign it as undone.',
    paragraph: '145.A.48(a)',
  },
  'same-person-inspecting': {
    sentence: '{name} did the work on defect {defect} and cannot inspect it.',
    next: 'Ask a second qualified person to inspect and sign.',
    paragraph: '145.A.48; 14 CFR 121.371(c)',
  },
  'only-own-work': {
    sentence: '{name} releases as {scope} and did not perform all of the work on defect {defect}; {performers} did.',
    next: 'Ask the performer, or somebody with a B1 or B2 licence, to release it.',
    paragraph: '66.A.20(a)',
  },
  'stays-open-not-said': {
    sentence:
      'The work on defect {defect} is released with the defect left open, and it is not said what stays open.',
    next: 'State the incomplete work in the release.',
    paragraph: '145.A.50(e)',
  },
  'reset-test-not-good': {
    sentence: 'The test after the reset was not good, so the defect {defect} is still there.',
    next: 'Rectify or defer it.',
    paragraph: 'common practice, no source',
  },
  'declined-without-reason': {
    sentence: 'The aircraft is declined for this flight, and it is not said why.',
    next: 'Write the reason, so that maintenance control can act on it.',
    paragraph: 'ORO.MLR.105; common practice, no source for the reason',
  },
  'role-does-not-accept': {
    sentence: '{name} signs as {role}; this is for the {asked} to accept.',
    next: 'Ask the {asked} of this flight.',
    paragraph: '14 CFR 121.533 (from memory)',
  },
  'shown-is-over': {
    sentence: 'What was shown was good until {until}, and that is over.',
    next: 'Read the answer for the flight again, then accept or decline it.',
    paragraph: 'ORO.MLR.105',
  },
  'correction-of-nothing': {
    sentence: 'There is nothing to correct in {entry}: {what} there.',
    next: 'Read the history again and name the entry, what of it is wrong, and what stands there now.',
    paragraph: 'AMC M.A.305(e)',
  },
  'correction-changes-nothing': {
    sentence: 'Of the correction, {words} reads "{now}" before and after.',
    next: 'Say what it should read, or leave it as it is.',
    paragraph: 'AMC M.A.305(e)',
  },
  'correction-moves-the-day': {
    sentence: 'The log time of defect {defect} is {was}; a correction to {now} would move it forward.',
    next: 'A correction may only make it earlier. Show the sheet to quality if the day in the log is wrong.',
    paragraph: 'M.A.403(c); 14 CFR 121.563',
  },
  'correction-gives-more-time': {
    sentence: 'The work is signed as done {was}; a correction to {now} could make it good for longer.',
    next: 'A correction may only make it earlier. If it was done later, sign the work again as it was done.',
    paragraph: 'M.A.403(b)(c)',
  },
  'second-look-missing': {
    sentence:
      'A correction of what is left on the aircraft, or of what decides something, needs a second person who looked.',
    next: 'Ask somebody else to look at the aircraft and sign.',
    paragraph: '145.A.48',
  },
  'second-look-not-asked': {
    sentence: 'A correction of {words} decides nothing, and is signed by one person.',
    next: 'Sign the correction itself; no second person is asked to look.',
    paragraph: 'common practice, no source',
  },
  'not-by-correction': {
    sentence: 'Of defect {defect}, {words} is not corrected in the record: {because}.',
    next: '{instead}',
    paragraph: 'AMC M.A.305(e); M.A.403(b)(c)',
  },
  'correction-not-one-of': {
    sentence: '"{now}" says nothing about {words}.',
    next: 'Say one of these: {allowed}.',
    paragraph: '14 CFR 121.628; ORO.MLR.105',
  },
  'interval-of-another-unit': {
    sentence: 'For unit {unit} the row counts {other}, and defect {defect} was deferred for {signed}.',
    next: 'Write it up again with the time that stands in the log: its day stays. Then enter as work that this one was deferred wrongly, and release it.',
    paragraph: 'ORO.MLR.105; M.A.403(c)',
  },
  'counted-by-engine': {
    sentence: 'A limit of defect {defect} counts what engine {engine} has used, which says nothing of unit {unit}.',
    next: 'Write it up again with the time that stands in the log: its day stays, and its own engine counts. Then enter as work that this one was deferred wrongly, and release it.',
    paragraph: 'M.A.403(c); ORO.MLR.105',
  },
  'unit-moved-since': {
    sentence: 'Unit {unit} of defect {defect} was swapped or ruled out since; named as failed now: {units}.',
    next: 'If the part that failed was another one, write it up again with the time that stands in the log: its day stays. Then enter as work that this one was deferred wrongly, and release it.',
    paragraph: 'M.A.403(c); common practice, no source',
  },
} as const satisfies Record<string, RefusalEntry>;
