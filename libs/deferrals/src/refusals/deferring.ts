import type { RefusalEntry } from './entry.js';

/** Deferring a defect, keeping it deferred, and flying with it. */
export const DEFERRING_REFUSALS = {
  'no-basis': {
    sentence: 'Defect {defect} cannot be deferred without a basis: {missing}.',
    next: 'Name the MEL row, or the document with its reference and limit, or rectify the defect.',
    paragraph: 'M.A.403(b)(c); ORO.MLR.105; 14 CFR 121.628',
  },
  'zone-data-older': {
    sentence:
      'This server has time-zone data {tzdb}, older than the {newest} that deadlines are stored with; it computes none.',
    next: 'Bring the server up to date, or use one that is; what is stored can be read and flown by.',
    paragraph: 'our own rule: an end of day follows from zone data, and older data must not decide silently',
  },
  'row-not-of-this-entry': {
    sentence: 'Row {row} stands under entry {rowEntry}, but the item that failed is {entry}.',
    next: 'Choose a row of entry {entry}, or identify the item again.',
    paragraph: 'ORO.MLR.105',
  },
  'row-not-for-this-unit': {
    sentence: 'Row {row} of entry {entry} relieves {covers}, not {unit}.',
    next: 'Choose a row that covers {unit}; there is no relief by analogy.',
    paragraph: 'ORO.MLR.105; 14 CFR 121.628',
  },
  'concurrence-missing': {
    sentence: 'This deferral needs the concurrence of maintenance control, and there is none.',
    next: 'Ask maintenance control to concur with a signature.',
    paragraph: 'operator setting; 14 CFR 121.628',
  },
  'concurrence-to-something-else': {
    sentence: '{name} concurred to {basis}, but not to what is to be signed: {differing}.',
    next: 'Sign what was concurred to, or ask for another concurrence to this.',
    paragraph: 'operator setting; 14 CFR 121.628',
  },
  'same-person-concurring': {
    sentence: '{name} signed the deferral and cannot concur to it as well.',
    next: 'Ask somebody else of maintenance control to concur.',
    paragraph: 'common practice, no source',
  },
  'unit-deferred-already': {
    sentence: '{item} of write-up {defect} is open under deferral already, as {other}.',
    next: 'Add this write-up to {other} as another entry: its clock stays. If it is another unit, name that one.',
    paragraph: '14 CFR 121.563; M.A.403(c)',
  },
  'unit-may-be-deferred-already': {
    sentence: '{item} of write-up {defect} may be the one that is open under deferral already, as {other}.',
    next: 'Find out which unit failed and name it on both; or add this write-up to {other}, whose clock stays.',
    paragraph: '14 CFR 121.563; M.A.403(c)',
  },
  'not-the-same-unit': {
    sentence: 'Write-up {defect} is not of a unit that is open under deferral as {other}.',
    next: 'Answer it on its own.',
    paragraph: '14 CFR 121.563',
  },
  'joined-to-itself': {
    sentence: 'Write-up {defect} cannot be joined to itself; it is one and the same.',
    next: 'Choose the other open item of the same unit, or answer this one on its own.',
    paragraph: '14 CFR 121.563',
  },
  'joined-was-earlier': {
    sentence: 'Write-up {defect} was recorded at {recordedAt}, before {other}, which counts from {counts}.',
    next: 'Correct the log time of {other} to the earlier one first, so that no day is lost.',
    paragraph: 'M.A.403(c); 14 CFR 121.563',
  },
  'not-deferred': {
    sentence: 'Defect {defect} is not deferred.',
    next: 'Defer it first, or rectify it.',
    paragraph: 'M.A.403(b)(c)',
  },
  'interval-over': {
    sentence: 'The rectification interval of defect {defect} ended at {endedAt}.',
    next: 'Rectify it before the next flight; another row does not lend new time.',
    paragraph: 'ORO.MLR.105; 14 CFR 121.628',
  },
  'interval-used-up': {
    sentence: 'The interval of defect {defect} is used up: {left}.',
    next: 'Rectify it before the next flight; another row does not lend new time.',
    paragraph: 'ORO.MLR.105; 14 CFR 121.628',
  },
  'past-the-deadline': {
    sentence: 'This flight is not inside the interval of defect {defect}. {because}',
    next: 'Rectify it before this flight, or plan the flight inside the interval.',
    paragraph: 'ORO.MLR.105; 14 CFR 121.628',
  },
  'use-not-known': {
    sentence: 'Nobody knows how many {unit} were used since defect {defect} was deferred.',
    next: 'Enter the movements since then, then ask again.',
    paragraph: 'ORO.MLR.105',
  },
  'clock-restarted': {
    sentence: 'Defect {defect} counts from {recordedAt}; a limit counted from {asked} would restart its clock.',
    next: 'Count from {recordedAt}. Re-entry, change of row, transfer and hand-over do not restart the clock.',
    paragraph: 'ORO.MLR.105; M.A.403(c)',
  },
  'start-of-days-stated': {
    sentence: 'An interval of {interval} counts from the day of discovery; no document states another start for it.',
    next: 'Leave the stated start out.',
    paragraph: 'ORO.MLR.105; 14 CFR 121.628',
  },
  'start-stated-later': {
    sentence:
      'Row and policy count from {counts}; the start stated is known only from {stated} on, which would lend time.',
    next: 'State an instant, or a reading of the counter, that is not later; or leave the stated start out.',
    paragraph: 'ORO.MLR.105; M.A.403(c)',
  },
  'cause-not-closed': {
    sentence:
      'The cause of the stricter row is not gone: {cause} is no closed defect of {entry}, or another unit is still down.',
    next: 'Rectify and release the other units first, or keep the earlier limit.',
    paragraph: 'ORO.MLR.105',
  },
  'control-must-sign': {
    sentence: '{name} signs as {role}; a later limit after the cause is gone is for maintenance control to sign.',
    next: 'Ask maintenance control to sign the change of row.',
    paragraph: 'common practice, no source',
  },
  'procedure-not-of-this-row': {
    sentence: '{work} is no procedure of {basis}; it has {procedures}.',
    next: 'Sign the procedure of the row that is in force.',
    paragraph: 'ORO.MLR.105',
  },
  'procedure-leaves-more': {
    sentence: 'Procedure {work} leaves things altered that are not named with a tag: {missing}.',
    next: 'Enter each with place and tag number, so that nothing is left that nobody knows about.',
    paragraph: '145.A.48',
  },
  'procedure-not-signed': {
    sentence: 'Procedure {work} is not signed for this flight.',
    next: 'Do it, sign it, then ask again.',
    paragraph: 'ORO.MLR.105; 14 CFR 121.628',
  },
  'placard-not-fitted': {
    sentence: 'The placard "{text}" at {position} is not fitted.',
    next: 'Fit it and enter its number.',
    paragraph: 'ORO.MLR.105; 14 CFR 121.628',
  },
  'left-item-known': {
    sentence: '{thing} is left on the aircraft under this defect already.',
    next: 'Use the entry that exists, or give the new thing its own number.',
    paragraph: '145.A.48',
  },
  'left-item-unknown': {
    sentence: 'What was chosen is not left on the aircraft under defect {defect}. Left: {left}.',
    next: 'Choose one of the things that are left.',
    paragraph: '145.A.48',
  },
  'unit-not-of-this-defect': {
    sentence: 'Unit {unit} is not the failed unit of defect {defect}: {units}.',
    next: 'Name the unit that is failed now.',
    paragraph: 'common practice, no source',
  },
  'swap-among-failed': {
    sentence:
      'Unit {unit} is named as failed in defect {defect} already ({units}), so no failed part is moved there.',
    next: 'Name the position that the failed part is in now. Where one of several failed and nobody knows which, find out first.',
    paragraph: 'common practice, no source',
  },
  unanswered: {
    sentence: 'Write-up {defect} is not answered.',
    next: 'Rectify or defer it before the next flight.',
    paragraph: '14 CFR 121.563',
  },
  'grant-does-not-cover': {
    sentence: 'Defect {defect} may fly only under {document}, and that does not cover this flight: {because}.',
    next: 'Rectify the defect, or ask the authority again.',
    paragraph: '21.A.701; M.A.403(b)',
  },
  'grant-window-empty': {
    sentence: 'Document {document} would end ({until}) before it begins ({from}).',
    next: 'Read the dates again from the document.',
    paragraph: '21.A.701',
  },
} as const satisfies Record<string, RefusalEntry>;
