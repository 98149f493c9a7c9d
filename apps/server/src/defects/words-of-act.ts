import {
  type Act,
  askingsEndedBy,
  basisInWords,
  type Corrected,
  type CorrectionAsked,
  deadlineOf,
  type Deferred,
  FIELD_WORDS,
  itemInWords,
  type LeftItem,
  type Owner,
  ownerInWords,
  type Part,
  type RowChanged,
  type SignedLimit,
  type StaysAsWritten,
  thingInWords,
  type WhenFound,
} from '#deferrals';
import { FOUND, valueInWords } from '../correcting/value-words.js';
import { sayDay } from '../deferrals/say-time.js';
import { wordsOfCardAct } from './words-of-card-act.js';

/**
 * What an act did, as one line of history reads.
 * @param acts the history it stands in, which names steps of cards
 * @param base the zone in which a corrected time is read beside UTC
 */
export function wordsOfAct(act: Act, acts: readonly Act[] = [], base = 'UTC'): string {
  return `${whatItDid(act, acts, base)}${endedWords(act, acts, base)}`;
}

function whatItDid(act: Act, acts: readonly Act[], base: string): string {
  switch (act.kind) {
    case 'written-up':
      return `Written up${act.sheet ? ` on sheet ${act.sheet}` : ''}${foundWords(act.whenFound)}: ${act.description}`;
    case 'identified':
      return `Found to be ${itemInWords(act.item)}`;
    case 'deferred':
      return `Deferred under ${basisInWords(act.basis)}${basisWords(act)}`;
    case 'procedure-signed':
      return `Procedure ${act.work} done${leavingWords(act.leaves)}`;
    case 'placard-fitted':
      return `Placard ${act.item.tag} fitted at ${act.item.where}: ${act.text}`;
    case 'placard-removed':
      return 'Placard removed';
    case 'left-on-the-aircraft':
      return `Left on the aircraft: ${thingWords(act.items)}`;
    case 'undone':
      return `Undone: ${act.items.length} thing(s) that were left on the aircraft`;
    case 'row-changed':
      return `Row changed to ${basisInWords(act.basis)}${basisWords(act)}: ${act.reason}`;
    case 'extended':
      return `Interval extended${endWords(act.limits)} under procedure ${act.procedure}`;
    case 'authority-granted':
      return `${act.document.kind === 'permit' ? 'Permit' : 'Document'} ${act.document.number} of ${act.document.authority} entered: ${act.limit}`;
    case 'transferred':
      return `Part moved from unit ${act.fromUnit} to unit ${act.toUnit}: ${act.reason}${partWords(act.parts)}`;
    case 're-entered':
      return `Written again on sheet ${act.sheet}: ${act.reason}`;
    case 'handed-over':
      return `Handed over to ${act.to}: ${act.note}`;
    case 'rectification':
      return `${act.complete ? 'Rectified' : 'Work begun'}: ${act.workDone} (${act.reference})${partWords(act.parts)}`;
    case 'tested':
      return `Test ${act.result === 'good' ? 'good' : 'not good'}: ${act.test}`;
    case 'inspected':
      return act.unforeseen === undefined
        ? `Inspected independently: ${act.findings}`
        : `Inspected again by one who did the work, in an unforeseen case (${act.unforeseen}): ${act.findings}`;
    case 'restored':
      return `Normal configuration restored (${act.reference})`;
    case 'released':
      return act.outcome === 'closed'
        ? 'Released to service'
        : `Work released; stays open: ${act.staysOpen.join('; ')}`;
    case 'no-fault-found':
      return `No fault found: ${act.checks} (${act.reference})`;
    case 'raised-in-error':
      return `Raised in error: ${act.reason}`;
    case 'reset-and-watch':
      return `Reset (${act.reference}), test ${act.result === 'good' ? 'good' : 'not good'}: ${act.watch}`;
    case 'generally-verified':
      return `Gone over: tools accounted for, panels closed, register checked${act.remarks === '' ? '' : `; ${act.remarks}`}`;
    case 'taken-over':
      return `Belongs to this one${act.together ? ' as well' : ''}: ${thingWords(act.items)}: ${act.reason}`;
    case 'given-over':
      return `Given over to ${givenTo(act.to)}, ${act.items.length} thing(s) that stay on the aircraft: ${act.reason}`;
    case 'joined':
      return `Goes on as an entry of another open item: ${act.reason}`;
    case 'correction-asked':
      return `To be corrected once a second person looked: ${FIELD_WORDS[act.field]} ${fromTo(act, base)}: ${act.reason}`;
    case 'stays-as-written':
      return `Stays as written${askedWords(act, acts, base)}: ${act.reason}`;
    case 'corrected':
      return act.secondLook === null
        ? `Corrected: ${FIELD_WORDS[act.field]} ${fromTo(act, base)}: ${act.reason}`
        : `Corrected after a second look, as ${act.by.name} asked: ${FIELD_WORDS[act.field]} ${fromTo(act, base)}: ${act.reason}`;
    case 'card-started':
    case 'card-stepped':
    case 'card-inspected':
    case 'card-signed':
    case 'card-stopped':
      return wordsOfCardAct(act, acts);
  }
}

/** What waited for a second look and pointed at what this act did away with. */
function endedWords(act: Act, acts: readonly Act[], base: string): string {
  return askingsEndedBy(act, acts)
    .map((one) => `; the correction asked for is not made, ${FIELD_WORDS[one.field]} ${fromTo(one, base)}`)
    .join('');
}

function askedWords({ asked }: StaysAsWritten, acts: readonly Act[], base: string): string {
  const one = acts.find(({ id }) => id === asked);
  return one?.kind === 'correction-asked' ? `, ${FIELD_WORDS[one.field]}, not ${fromTo(one, base)}` : '';
}

function foundWords(whenFound: WhenFound | undefined): string {
  return whenFound === undefined ? '' : ` (found ${FOUND[whenFound]})`;
}

function fromTo({ field, was, now }: Corrected | CorrectionAsked, base: string): string {
  const said = (value: string | null): string => {
    const words = valueInWords(field, value, base);
    return words === null ? 'nothing' : `"${words}"`;
  };
  return `${said(now)} in place of ${said(was)}`;
}

/** The unit of a row; who issued a document, and its limit. */
function basisWords({ basis, item }: Deferred | RowChanged): string {
  if (basis.kind !== 'mel-row') return `, issued by ${basis.issuedBy}, limit: ${basis.limit}`;
  return `, unit ${item.units.join(' or ')}`;
}

function partWords(parts: readonly Part[]): string {
  return parts
    .map(({ partNumber, serialOn, serialOff, certificate }) =>
      [
        `; part ${partNumber}`,
        ...(serialOn === undefined ? [] : [`serial ${serialOn} fitted`]),
        ...(serialOff === undefined ? [] : [`serial ${serialOff} removed`]),
        ...(certificate === undefined ? [] : [`certificate ${certificate}`]),
      ].join(', '),
    )
    .join('');
}

function endWords(limits: readonly SignedLimit[]): string {
  const { lastDay } = deadlineOf(limits);
  return lastDay === null ? '' : ` to the end of ${sayDay(lastDay)}`;
}

/** A defect by its id would tell nobody anything; the register shows which one. */
function givenTo(owner: Owner): string {
  return owner.kind === 'defect' ? 'another open item' : ownerInWords(owner);
}

function leavingWords(items: readonly LeftItem[]): string {
  return items.length === 0 ? '' : `, leaving ${thingWords(items)}`;
}

function thingWords(items: readonly LeftItem[]): string {
  return items.map(thingInWords).join(', ');
}
