import { Paper } from './paper.js';
import { drawQr } from './qr-code.js';

/** One placard as it is stuck on. */
export interface PlacardLabel {
  /** Number on the placard: `Q-ABC/3-1`. */
  number: string;
  text: string;
  position: string;
  /** The item and its unit, in words. */
  item: string;
  /** Until when, in words; null where the basis sets no day. */
  until: string | null;
  fitted: boolean;
  /** What of the item read otherwise before, in words; null where nothing did. */
  corrected: string | null;
  /** Opens the deferral. */
  address: string;
}

export interface LabelsOf {
  title: string;
  operator: { name: string; invented: boolean };
  labels: readonly PlacardLabel[];
  madeAt: string;
}

const MM = 72 / 25.4;
const ROLL_WIDTH = 62 * MM;
const ROLL_MARGIN = 3 * MM;
const ROLL_QR = 24 * MM;
const SHEET_LABEL = { width: 84 * MM, gap: 6 * MM, inset: 4 * MM };

/** Placards on a roll 62 mm wide, each as long as its text needs. */
export function placardRoll({ title, operator, labels, madeAt }: LabelsOf): Promise<Buffer> {
  const paper = new Paper({ title, author: operator.name, madeAt, size: 'each' });
  const width = ROLL_WIDTH - 2 * ROLL_MARGIN;
  for (const label of labels) {
    const height = labelHeight(paper, label, operator, width) + 2 * ROLL_MARGIN;
    paper.document.addPage({ size: [ROLL_WIDTH, height], margin: 0 });
    drawLabel(paper, label, operator, { left: ROLL_MARGIN, top: ROLL_MARGIN, width });
  }
  return paper.finish(null);
}

/** Placards on A4, two beside each other, framed where they are cut. */
export function placardSheet({ title, operator, labels, madeAt }: LabelsOf): Promise<Buffer> {
  const paper = new Paper({ title, author: operator.name, madeAt });
  const { document } = paper;
  const { top: highest, left: leftmost, bottom } = document.page.margins;
  const { width, gap, inset } = SHEET_LABEL;
  const inner = width - 2 * inset;
  let top = highest;
  for (let first = 0; first < labels.length; first += 2) {
    const pair = labels.slice(first, first + 2);
    const height = Math.max(...pair.map((label) => labelHeight(paper, label, operator, inner))) + 2 * inset;
    if (top + height > document.page.height - bottom) {
      document.addPage();
      top = highest;
    }
    for (const [column, label] of pair.entries()) {
      const left = leftmost + column * (width + gap);
      document.rect(left, top, width, height).lineWidth(0.5).dash(3, { space: 3 }).stroke().undash();
      drawLabel(paper, label, operator, { left: left + inset, top: top + inset, width: inner });
    }
    top += height + gap;
  }
  return paper.finish([
    `${title}. Stick on where it says; the number goes into the record when the placard is signed.`,
  ]);
}

interface Place {
  left: number;
  top: number;
  width: number;
}

const LINES = { text: 13, position: 9, item: 7.5, number: 11 } as const;

function drawLabel(paper: Paper, label: PlacardLabel, operator: LabelsOf['operator'], place: Place): void {
  const { document } = paper;
  const { left, width } = place;
  let top = place.top;
  const put = (text: string, font: 'plain' | 'strong', points: number, at = left, wide = width): void => {
    document.font(font).fontSize(points);
    const shown = paper.shown(text);
    document.text(shown, at, top, { width: wide, lineGap: 1, lineBreak: true });
    top += document.heightOfString(shown, { width: wide, lineGap: 1 }) + 3;
  };
  put(label.text, 'strong', LINES.text);
  put(label.position, 'plain', LINES.position);
  const low = top;
  const beside = left + ROLL_QR + 2 * MM;
  const narrow = width - ROLL_QR - 2 * MM;
  for (const [text, font, points] of smallLines(label, operator)) put(text, font, points, beside, narrow);
  drawQr(document, label.address, left, low, ROLL_QR);
}

function smallLines(
  { number, item, until, fitted, corrected }: PlacardLabel,
  { name, invented }: LabelsOf['operator'],
): [text: string, font: 'plain' | 'strong', points: number][] {
  return [
    [number, 'strong', LINES.number],
    [item, 'plain', LINES.item],
    ...(until === null ? [] : [[until, 'plain', LINES.item] as [string, 'plain', number]]),
    ...(corrected === null ? [] : [[corrected, 'plain', LINES.item] as [string, 'plain', number]]),
    [`${name}${invented ? ' · INVENTED, never for flight' : ''}${fitted ? ' · printed again' : ''}`, 'plain', 6.5],
  ];
}

function labelHeight(paper: Paper, label: PlacardLabel, operator: LabelsOf['operator'], width: number): number {
  const { document } = paper;
  const height = (text: string, font: string, points: number, wide: number): number => {
    document.font(font).fontSize(points);
    return document.heightOfString(text, { width: wide, lineGap: 1 }) + 3;
  };
  const top =
    height(label.text, 'strong', LINES.text, width) + height(label.position, 'plain', LINES.position, width);
  const small = smallLines(label, operator)
    .map(([text, font, points]) => height(text, font, points, width - ROLL_QR - 2 * MM))
    .reduce((sum, one) => sum + one, 0);
  return top + Math.max(ROLL_QR, small);
}
