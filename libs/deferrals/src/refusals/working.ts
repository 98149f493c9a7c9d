import type { RefusalEntry } from './entry.js';

/** Work by a card: in order, by whoever may, within limits, not cut short, everything accounted for. */
export const WORKING_REFUSALS = {
  'procedure-has-card': {
    sentence: 'Procedure {work} is done by work card "{card}", so it is not signed without it.',
    next: 'Start that card, do its steps, and sign the card.',
    paragraph: 'M.A.401(c); 145.A.45(e)',
  },
  'card-not-for-procedure': {
    sentence: 'Work card "{card}" is not the card of {work}.',
    next: 'Start the card that the procedure names.',
    paragraph: '145.A.45(e)',
  },
  'card-open-already': {
    sentence: 'Work card "{card}" was started at {startedAt} by {name} and is not signed.',
    next: 'Go on with that one, or have it stopped.',
    paragraph: '145.A.47(c)',
  },
  'card-not-open': {
    sentence: 'Work card "{work}" is not open under defect {defect}.',
    next: 'Start the card first, or read the defect again.',
    paragraph: '145.A.45(e)',
  },
  'cards-still-open': {
    sentence: 'Work cards started under defect {defect} are not signed: {cards}.',
    next: 'Finish and sign each, or stop it with nothing of it left: {cards}.',
    paragraph: '145.A.50(a)',
  },
  'step-unknown': {
    sentence: 'Work card "{card}" has no step "{step}".',
    next: 'Read the card again.',
    paragraph: '145.A.45(e)',
  },
  'step-done-otherwise': {
    sentence: 'Step {step} asks to {asked}; "{given}" does not do it.',
    next: 'Enter what the step asks for: {asked}.',
    paragraph: '145.A.45(e)',
  },
  'step-done-already': {
    sentence: 'Step {step} was done at {doneAt} by {name}.',
    next: 'Go on with the next step.',
    paragraph: '145.A.45(e)',
  },
  'step-before-others': {
    sentence: 'Step {step} comes after steps that are not done: {missing}.',
    next: 'Do first: {missing}.',
    paragraph: '145.A.45(e)',
  },
  'step-needs-licence': {
    sentence: 'Step {step} asks for a licence of category {asked}; {name} holds {held}.',
    next: 'Ask somebody with a licence of category {asked}.',
    paragraph: '145.A.30(g); 66.A.20(a)',
  },
  'second-person-missing': {
    sentence: 'Step {step} needs a second person ({what}), and {name} names nobody.',
    next: 'Have that person sign, in the form of this step, with their own secret. Alone this step is not begun.',
    paragraph: '145.A.45(e); 145.A.47 (from memory)',
  },
  'second-person-same': {
    sentence: '{name} does step {step} and cannot be its second person as well.',
    next: 'Have somebody else who is there sign.',
    paragraph: '145.A.45(e); 145.A.47 (from memory)',
  },
  'second-person-unsigned': {
    sentence: '{second} is named as the second person of step {step} and did not sign.',
    next: 'Have {second} read what is certified and enter their own secret in the form of this step.',
    paragraph: '145.A.45(e); 145.A.47 (from memory)',
  },
  'second-person-needs-licence': {
    sentence: 'Step {step} asks for a second person with a licence of category {asked}; {name} holds {held}.',
    next: 'Have somebody with a licence of category {asked} be there and sign.',
    paragraph: '145.A.30(g); 66.A.20(a)',
  },
  'equipment-not-stated': {
    sentence: 'Step {step} uses {what}, and it is not stated which one: {asked}.',
    next: 'Read it from the equipment and enter it: {asked}.',
    paragraph: '145.A.40(b) (from memory)',
  },
  'equipment-out-of-calibration': {
    sentence: 'Step {step}: the calibration of {what} {number} ended on {until}; it is used on {usedOn}.',
    next: 'Take one that is in calibration. Put this one aside, tag it, and tell the tool store.',
    paragraph: '145.A.40(b) (from memory)',
  },
  'tool-not-issued': {
    sentence: 'Step {step}: number {given} is not the {what} that this card issued: {issued}.',
    next: 'Use the one that was issued, or return it and issue the other.',
    paragraph: '145.A.48(a)(1)',
  },
  'certificate-missing': {
    sentence: 'Step {step} fits {part}, and its release certificate is not named.',
    next: 'Enter the reference of its certificate. A part without one is not fitted: put it aside and tell the store.',
    paragraph: '145.A.42(a) (from memory)',
  },
  'value-outside-limits': {
    sentence: 'Step {step}: {what} reads {value}; the card allows {limits}.',
    next: 'Do not go on. Read it again; if it stays so, do what the manual says for a value outside limits, and write it up.',
    paragraph: '145.A.45(e)',
  },
  'reading-missing': {
    sentence: 'Step {step} asks for readings that are not given: {missing}.',
    next: 'Read and enter: {missing}.',
    paragraph: '145.A.45(e)',
  },
  'renewed-too-few': {
    sentence: 'Step {step} renews {asked} of {part}; {given} are named.',
    next: 'Renew all {asked} and enter their part number and batch. This step cannot be left out.',
    paragraph: '145.A.42; 145.A.45(e)',
  },
  'minutes-not-shown': {
    sentence: 'Step {step} lasts as long as {shownBy} shows; {minutes} minutes is no such value.',
    next: 'Read the value from the aircraft and enter it in whole minutes. It is never guessed.',
    paragraph: '145.A.45(e)',
  },
  'wait-not-begun': {
    sentence: 'Step {step} was not begun, so nothing has lasted.',
    next: 'Begin it: its time counts from then.',
    paragraph: '145.A.45(e)',
  },
  'wait-cut-short': {
    sentence: 'Step {step} began at {begunAt} and lasts {minutes} minutes: it is cut short by {short}.',
    next: 'Go on until {until}, or begin it again.',
    paragraph: '145.A.45(e)',
  },
  'count-differs': {
    sentence: 'Step {step}: {given} of {asked} {what} {word}; missing: {missing}.',
    next: 'Find every one before you go on.',
    paragraph: '145.A.48(a)(1)',
  },
  'number-differs': {
    sentence: 'Step {step}: number {given} is not {what} that is still there: {still}.',
    next: 'Undo the one that is still there, read its number and enter it.',
    paragraph: '145.A.48(a)(1)',
  },
  'nothing-of-it-left': {
    sentence: 'Step {step} undoes {what}, and the register of the aircraft holds none under defect {defect}.',
    next: 'Look at the aircraft. If it is there, correct the register with a second person; if not, this is not the card.',
    paragraph: '145.A.48(a)(1)',
  },
  'counted-by-card': {
    sentence: '{thing} was counted out by work card "{card}", which is not signed: the card counts it in.',
    next: 'Undo it by its step on that card.',
    paragraph: '145.A.48(a)(1)',
  },
  'inspector-did-it': {
    sentence: '{name} had a hand in {steps} and cannot inspect it in step {step}.',
    next: 'Ask a second qualified person to look and to sign that step.',
    paragraph: '145.A.48(a)(2); 14 CFR 121.371(c)',
  },
  'card-not-finished': {
    sentence: 'Work card "{card}" is not finished: {missing}.',
    next: 'Do what is missing, then sign the card.',
    paragraph: '145.A.48(a); 145.A.50(a)',
  },
  'card-not-confirmed': {
    sentence: 'Work card "{card}" was written from {reference}; revision {newer} of {issuedOn} is recorded since.',
    next: 'Ask an authorised person to hold the card against revision {newer} and confirm it. The manual prevails.',
    paragraph: '145.A.45(a)(d)',
  },
  'card-steps-of-others': {
    sentence: '{name} signs with a category A licence and did not do all steps of card "{card}"; {others} did.',
    next: 'Ask somebody with a B1 or B2 licence to sign the card.',
    paragraph: '66.A.20(a)',
  },
  'card-leaves-things': {
    sentence: 'Work card "{card}" cannot be stopped while this is still out: {things}.',
    next: 'Undo each by its step first: {things}.',
    paragraph: '145.A.48(a)(1)',
  },
} as const satisfies Record<string, RefusalEntry>;
