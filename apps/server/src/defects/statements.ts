/**
 * The statement that each signature certifies. The signer sees it, sends it back word for word, and it is stored with the
 * signature (published requirement E-04 on electronic signatures: the intent is shown at signing).
 */
import { type FieldAsked, FIELDS_ASKED } from '../correcting/correctable.js';
import { ApiPropertyOptional } from '@nestjs/swagger';
import { IsOptional, Matches } from 'class-validator';
import { Id, Instant, OneOf, Text } from '../http/fields.js';

export const SIGNED_ACTS = [
  'defer',
  'change-row',
  'concur',
  'procedure',
  'placard',
  'undo',
  'rectify',
  'test',
  'inspect',
  'restore',
  'release',
  'no-fault-found',
  'raised-in-error',
  'extend',
  'enter-document',
  'leave',
  'swap-unit',
  'join',
  'verify',
  'card',
  'card-second',
  'card-inspection',
  'card-stop',
  'correct',
  'second-look',
  'stays-as-written',
] as const;

export type SignedAct = (typeof SIGNED_ACTS)[number];

/** What a statement names. */
export interface StatementFacts {
  registration: string;
  number: string;
  /** What the deferral stands on, in words; only for `defer`, `change-row` and `concur`. */
  basis?: string;
  /** From when use counts where a document states it, a whole sentence; only for `defer` and `concur`. */
  start?: string;
  /** Which procedure, for `procedure`; the title of the card, for acts on a card. */
  work?: string;
  /** Which step and what of the second person it asks, in words; only for `card-second`. */
  step?: string;
  /** What is granted, in words; only for `extend`. */
  extension?: string;
  /** What reads otherwise and what that moves, in words; only for `correct`, `second-look` and `stays-as-written`. */
  correction?: string;
  /** Whether whoever asked takes it back; only for `stays-as-written`. */
  takenBack?: boolean;
  /** Whether it is the write-up that is corrected; only for `correct`. */
  ofWriteUp?: boolean;
  /** Whether a second person looks before it reads otherwise; only for `correct`. */
  waits?: boolean;
  /** Incomplete work, in words; only for `release`. */
  staysOpen?: string;
  /** Why one who did the work inspects it; only for `inspect`. */
  unforeseen?: string;
  /** What the operator calls its release; only for `release`. */
  releaseName?: string;
}

export class StatementQuery {
  @OneOf(SIGNED_ACTS, { description: 'Which act is to be signed.' })
  act!: SignedAct;

  @Text(40, { description: 'MEL entry, for `defer` and `concur`.', optional: true })
  entry?: string;

  @Text(20, { description: 'Row, for `defer`, `change-row` and `concur`.', optional: true })
  row?: string;

  @Text(300, { description: 'Document in words, for `defer` on another basis.', optional: true })
  document?: string;

  @Instant({ description: 'Start of use that a document states, for `defer` and `concur`.', optional: true })
  startAt?: string;

  @Matches(/^\d{1,9}$/)
  @ApiPropertyOptional({ description: 'Or the counter at the start.', type: 'integer' })
  @IsOptional()
  startCounter?: string;

  @Matches(/^\d{1,9}$/)
  @ApiPropertyOptional({ description: 'What the counter read later.', type: 'integer' })
  @IsOptional()
  startReading?: string;

  @Instant({ description: 'When it read that.', optional: true })
  startReadAt?: string;

  @Text(200, { description: 'The document that states the start.', optional: true })
  startDocument?: string;

  @Text(120, {
    description: 'Which work, for `procedure`; which work on a card, for acts on a card.',
    optional: true,
  })
  work?: string;

  @Text(40, { description: 'Which step of the card, for `card-second`.', optional: true })
  step?: string;

  @Id({ description: 'The act that is wrong, for `correct`; absent: the write-up.', optional: true })
  of?: string;

  @OneOf(FIELDS_ASKED, { description: 'What is to read otherwise, for `correct`.', optional: true })
  field?: FieldAsked;

  @Matches(/^\d{1,2}$/)
  @ApiPropertyOptional({ description: 'Which of several, from 0, for `correct`.', type: 'integer' })
  @IsOptional()
  part?: string;

  @Id({ description: 'The correction that waits, for `second-look` and `stays-as-written`.', optional: true })
  asked?: string;

  @Text(4000, { description: 'What it should read, for `correct`.', optional: true })
  now?: string;

  @Text(2000, { description: 'What stays open, for `release`; several joined by "; ".', optional: true })
  staysOpen?: string;

  @Text(1000, { description: 'Why one who did the work inspects it, for `inspect`.', optional: true })
  unforeseen?: string;
}

/** The default wording of a release is that of 145.A.50; an operator's own setting replaces it. */
export function statementOf(act: SignedAct, facts: StatementFacts, releaseWording: string): string {
  const what = `defect ${facts.number} on ${facts.registration}`;
  const start = facts.start === undefined ? '' : ` ${facts.start}`;
  switch (act) {
    case 'defer':
      return `I defer ${what} on the basis of ${facts.basis ?? 'a document'}.${start} I have read its conditions, and its procedures and placard belong to this deferral.`;
    case 'change-row':
      return `I change the basis of ${what} to ${facts.basis ?? 'another row'}. I have read its conditions; its procedures and placard belong to the deferral from now on, and the clock is kept.`;
    case 'concur':
      return `I concur that ${what} stands deferred on the basis of ${facts.basis ?? 'a document'}.${start} I have read its conditions. Another person signs the deferral.`;
    case 'procedure':
      return `I carried out ${facts.work ?? 'the procedure'} for ${what} as the approved manual says, and everything it leaves altered on the aircraft is listed here.`;
    case 'placard':
      return `I fitted the placard for ${what} at the place named.`;
    case 'undo':
      return `I undid the things named, which were left on the aircraft for ${what}, and put them back as the approved manual says.`;
    case 'rectify':
      return `I carried out the work described for ${what} as the approved manual says.`;
    case 'test':
      return `I carried out the test described for ${what} and recorded its true result.`;
    case 'inspect':
      return facts.unforeseen === undefined
        ? `I inspected the work on ${what} independently of the person who did it.`
        : `I had a hand in the work on ${what} and inspected it again myself, since nobody else could: ${facts.unforeseen}.`;
    case 'restore':
      return `The system of ${what} is back in its normal configuration: nothing altered for it remains, tools are accounted for and panels are closed.`;
    case 'no-fault-found':
      return `I carried out the checks described for ${what} as the approved manual says and found no fault.`;
    case 'raised-in-error':
      return `The write-up ${facts.number} on ${facts.registration} was raised in error, for the reason given.`;
    case 'extend':
      return `I grant the extension of the interval of ${what}${facts.extension ? `: ${facts.extension}` : ''}. I have read why it was not rectified in time, that the reason lies outside the operator's control, and the plan.`;
    case 'enter-document':
      return `I entered for ${what} what the document of the authority says: its number, its limit, its times, its flights. It moves no deadline.`;
    case 'leave':
      return `I left the things named altered on ${facts.registration} for defect ${facts.number}, as the approved manual says, and each is listed with its place, its number and how it is undone.`;
    case 'swap-unit':
      return `I swapped the failed part of ${what} to the position named. The placard and everything left on the aircraft for it are where I say they are now. Its clock runs on.`;
    case 'join':
      return `Write-up ${facts.number} on ${facts.registration} is of the same failed unit as the open item named, and goes on as another entry of it. The clock of that item stays.`;
    case 'verify':
      return `I went over ${facts.registration} after the work on defect ${facts.number}: all tools are accounted for, all panels and cowls opened are closed, and what is left on the aircraft is what its register says.`;
    case 'card':
      return `Every step of work card "${facts.work ?? ''}" was done for ${what} as the approved manual says. Everything it opened, pulled, inhibited or fitted is undone, or stands in the register of what is left on the aircraft.`;
    case 'card-second':
      return `I am the second person at step ${facts.step ?? ''} of work card "${facts.work ?? ''}" for ${what}. I am there myself and do my part of it; somebody else does the step.`;
    case 'card-inspection':
      return `I inspected what work card "${facts.work ?? ''}" names for ${what}, independently of whoever did it.`;
    case 'card-stop':
      return `Work card "${facts.work ?? ''}" for ${what} is stopped, and nothing of it is left on the aircraft.`;
    case 'correct':
      return `I correct the ${facts.ofWriteUp === false ? 'history' : 'write-up'} of ${what}: ${facts.correction ?? ''} What was written stays readable.${facts.waits === true ? ' All stands as it was until a second person has looked and signed.' : ''}`;
    case 'second-look':
      return `I looked myself, independently of the person who asked, and ${what} is as the correction says: ${facts.correction ?? ''} What was written stays readable.`;
    case 'stays-as-written':
      return facts.takenBack === true
        ? `I asked for a correction of ${what} and take it back: ${facts.correction ?? ''} It stays as it is written.`
        : `I looked myself, independently of the person who asked, and ${what} is as it is written: ${facts.correction ?? ''} The correction is not made.`;
    case 'release':
      return `${facts.releaseName ? `${facts.releaseName}. ` : ''}${releaseWording} (${what})${facts.staysOpen ? ` Not complete, and stays open: ${facts.staysOpen}.` : ''}`;
  }
}

/** Wording of 145.A.50, used where the operator has set none of its own. */
export const DEFAULT_RELEASE_WORDING =
  'Certifies that the work specified, except as otherwise specified, was carried out in accordance with Part-145 and in respect to that work the aircraft is considered ready for release to service.';
