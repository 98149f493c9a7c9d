import { thingInWords } from '#deferrals';
import type { ProofFile, SignedHead } from '#record';
import type { DefectViews } from '../defects/defect-views.service.js';
import { baseTime } from '../record/base-time.js';
import { CAUTIONS } from '../record/cautions.js';
import type { Subject } from '../record/exports.service.js';
import { Paper } from './paper.js';

export type ViewOfDefect = Awaited<ReturnType<DefectViews['view']>>['body'];
type Line = ViewOfDefect['history'][number];
type Correction = Line['corrections'][number];

/** An entry of the record that is no act on a defect: a movement received, a fact answered. */
export interface OtherEntry {
  number: number | null;
  what: string;
  by: string;
  enteredAt: string;
  leaf: string;
}

export interface HistoryOf {
  subject: Subject;
  defects: readonly ViewOfDefect[];
  others: readonly OtherEntry[];
  head: ProofFile['head'] | null;
  legalOriginal: 'paper' | 'electronic';
  madeAt: string;
}

const FOOT = [CAUTIONS[0] ?? '', CAUTIONS[1] ?? ''];

/** A whole history on paper: every act with who signed it, on which licence, in which role, and when by which clock. */
export function historyPaper(of: HistoryOf): Promise<Buffer> {
  const { subject, defects, others, madeAt } = of;
  const { operator, aircraft, name } = subject;
  const { base } = operator;
  const paper = new Paper({ title: `History of ${name}`, author: operator.name, madeAt });
  if (operator.invented) paper.text('INVENTED for demonstration, never for flight.', { font: 'strong' });
  paper
    .text(`History of ${name}`, { font: 'strong', points: 17, after: 4 })
    .text(`${operator.name} (${operator.code}), aircraft ${aircraft.registration}, type ${aircraft.type}`)
    .text(`Made ${when(madeAt, base)}. Legal original: ${original(of.legalOriginal)}.`)
    .text(headWords(of.head, base), { points: 8, after: 6 });
  for (const defect of defects) defectPart(paper, defect, base);
  if (others.length > 0) otherPart(paper, others, base);
  paper
    .keep(60)
    .rule()
    .text(CAUTIONS[2] ?? '');
  return paper.finish([...FOOT, `${name}, made ${when(madeAt, base)}`]);
}

function original(which: HistoryOf['legalOriginal']): string {
  return which === 'paper' ? 'the paper log' : 'the electronic record';
}

function headWords(head: HistoryOf['head'], base: string): string {
  if (head === null) return 'Nothing of it is sealed in the record yet.';
  const { signedAt } = head as SignedHead;
  const signed = signedAt ? `signed ${when(signedAt, base)}` : 'not signed';
  return `The record then held ${head.size} entries, root ${head.root}, ${signed}. The same history as a JSON file can be checked against it without the operator's help.`;
}

function defectPart(paper: Paper, { defect, arithmetic, history, left, waiting }: ViewOfDefect, base: string): void {
  paper.keep(110).rule();
  paper
    .text(`${defect.number} ${defect.title}`, { font: 'strong', points: 12.5, after: 3 })
    .text(defect.description)
    .text(
      [
        defect.basis && `Basis: ${defect.basis}`,
        defect.units.length > 0 && `Unit: ${defect.units.join(', ')}`,
        defect.sheet && `Log sheet ${defect.sheet}`,
        `In the log ${when(defect.recordedAt, base)}`,
      ]
        .filter(Boolean)
        .join(' · '),
    );
  if (defect.deadline) {
    const { lastDay, words } = defect.deadline;
    paper.text(`${lastDay === null ? '' : `Last day ${lastDay} (days of ${defect.deadline.base}). `}${words}`);
  }
  if (arithmetic) paper.text(`Counted: ${arithmetic}`, { points: 8 });
  for (const item of left) paper.text(`Left on the aircraft: ${thingInWords(item)}`);
  for (const { field, was, now, by } of waiting) {
    const words = `Waits for a second look, since ${by} says that it is mistyped: ${field} reads ${was ?? 'nothing'} and should read ${now}`;
    paper.text(words, { font: 'strong' });
  }
  paper.text('What happened', { font: 'strong', points: 10.5, after: 3 });
  for (const line of history) actPart(paper, line, base);
}

function actPart(paper: Paper, line: Line, base: string): void {
  paper.keep(64);
  paper.text(`${line.seq}. ${line.words}`, { font: 'strong' });
  for (const one of line.corrections) correctionPart(paper, one, base);
  paper.text(signerWords(line), { indent: 12 });
  const times = [
    line.occurredAt && `happened ${when(line.occurredAt, base)}`,
    `in the log ${when(line.recordedAt, base)}`,
    `entered ${when(line.enteredAt, base)}`,
    line.signedAt && `signed ${when(line.signedAt, base)}`,
  ].filter(Boolean);
  paper.text(capital(times.join('; ')), { indent: 12, points: 8 });
  if (line.statement) paper.text(`Certified: "${line.statement}"`, { indent: 12, points: 8 });
  paper.text(sealWords(line.sealedAs), { indent: 12, points: 8, after: 6 });
}

/** What was written stays on the paper, with a line through it. */
function correctionPart(paper: Paper, { field, was, now, reason, by, looked, at }: Correction, base: string): void {
  paper.keep(40);
  paper.text(`Corrected, ${field}. It read:`, { indent: 12, after: 0 });
  paper.text(was ?? 'nothing', { indent: 24, after: 0, struck: was !== null });
  paper.text(`It reads: ${now}`, { indent: 12, font: 'strong', after: 0 });
  const second = looked === null ? '' : `, looked at by ${looked}`;
  paper.text(`By ${by}${second}, ${when(at, base)}: ${reason}`, { indent: 12, points: 8 });
}

/** Name, licence, role: on every copy (what a reader must recognise in a signature). */
function signerWords({ by, role, licence, authorisation, organisation, statement }: Line): string {
  const signed = statement === null ? 'Entered by' : 'Signed by';
  const parts = [`${signed} ${by}`, `role ${role}`, licence && `licence ${licence}`];
  return [...parts, authorisation && `authorisation ${authorisation}`, organisation].filter(Boolean).join(', ');
}

function sealWords(number: number | null): string {
  return number === null ? 'Not sealed yet in the record.' : `Sealed in the record as number ${number}.`;
}

function otherPart(paper: Paper, others: readonly OtherEntry[], base: string): void {
  paper
    .keep(110)
    .rule()
    .text('Other entries of the record about this aircraft', { font: 'strong', points: 12.5, after: 4 });
  for (const { number, what, by, enteredAt, leaf } of others) {
    const place = number === null ? 'not sealed yet' : `number ${number}`;
    paper.text(`${when(enteredAt, base)}: ${what}, by ${by}, ${place}`, { points: 8, after: 0 });
    paper.text(leaf, { font: 'even', points: 6, indent: 12 });
  }
}

/** `2026-01-15 13:12:00 +01:00 (Europe/Paris)`: the clock of the base, with the offset in force, and which clock it is. */
export function when(at: string, base: string): string {
  const [day, time] = baseTime(at, base).split('T') as [string, string];
  return `${day} ${time.slice(0, 8)} ${time.slice(8)} (${base})`;
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}
