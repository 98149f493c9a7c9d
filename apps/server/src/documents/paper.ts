import PDFDocument from 'pdfkit';
import { FONTS, type FontName, NO_FORM, printable } from './fonts.js';

export interface PaperOptions {
  title: string;
  author: string;
  /** ISO 8601; the paper reads no clock. */
  madeAt: string;
  /** A4 when absent; `each`: no page is there before one is asked for, each of a size of its own. */
  size?: 'each';
  margin?: number;
}

/** How a text stands: its font, its size in points, how far from the left. */
export interface Style {
  font?: FontName;
  points?: number;
  indent?: number;
  /** Points of blank below. */
  after?: number;
  /** With a line through it: what was written and reads otherwise now. */
  struck?: boolean;
}

const MARGIN = 48;
const FOOT_POINTS = 7;
const BODY_POINTS = 9.5;

/**
 * A document on its way to the printer: text is put down from the top, pages follow by themselves, and at the end every
 * page gets its foot with its number. Made whole in memory and handed out as bytes.
 */
export class Paper {
  readonly document: PDFKit.PDFDocument;
  private missing = 0;
  private readonly ended: Promise<Buffer>;

  constructor({ title, author, madeAt, size, margin = MARGIN }: PaperOptions) {
    const made = new Date(madeAt);
    this.document = new PDFDocument({
      size: 'A4',
      autoFirstPage: size !== 'each',
      margin,
      bufferPages: true,
      lang: 'en',
      displayTitle: true,
      info: { Title: title, Author: author, Creator: 'Proviso', CreationDate: made, ModDate: made },
    });
    const chunks: Buffer[] = [];
    this.ended = new Promise((resolve, reject) => {
      this.document.on('data', (chunk: Buffer) => chunks.push(chunk));
      this.document.on('end', () => resolve(Buffer.concat(chunks)));
      this.document.on('error', reject);
    });
    for (const [name, path] of Object.entries(FONTS)) this.document.registerFont(name, path);
  }

  text(
    text: string,
    { font = 'plain', points = BODY_POINTS, indent = 0, after = 2, struck = false }: Style = {},
  ): this {
    const { document } = this;
    const left = document.page.margins.left + indent;
    const width = document.page.width - left - document.page.margins.right;
    document.font(font).fontSize(points);
    document.text(this.shown(text), left, document.y, { width, lineGap: 1, strike: struck });
    document.y += after;
    return this;
  }

  /** A line across the page. */
  rule(): this {
    const { document } = this;
    const { left, right } = document.page.margins;
    document.y += 4;
    document
      .moveTo(left, document.y)
      .lineTo(document.page.width - right, document.y)
      .lineWidth(0.7)
      .stroke();
    document.y += 6;
    return this;
  }

  /** Begins a new page where fewer points than these are left, so that a heading never stands alone at the foot. */
  keep(points: number): this {
    const { document } = this;
    if (document.y + points > document.page.height - document.page.margins.bottom) document.addPage();
    return this;
  }

  /** Text as the font in use can show it. */
  shown(text: string): string {
    const { text: shown, missing } = printable(text, (codePoint) => this.hasForm(codePoint));
    this.missing += missing;
    return shown;
  }

  /** Says what this print could not show; then puts the foot under every page and closes. A label has no foot: null. */
  finish(foot: readonly string[] | null): Promise<Buffer> {
    if (foot === null) {
      this.document.end();
      return this.ended;
    }
    if (this.missing > 0) this.keep(40).text(notShown(this.missing), { font: 'strong' });
    const { start, count } = this.document.bufferedPageRange();
    for (let page = 0; page < count; page += 1) {
      this.document.switchToPage(start + page);
      this.foot([...foot, `Page ${page + 1} of ${count}`]);
    }
    this.document.end();
    return this.ended;
  }

  private foot(lines: readonly string[]): void {
    const { document } = this;
    const { left, right, bottom } = document.page.margins;
    const width = document.page.width - left - right;
    document.font('plain').fontSize(FOOT_POINTS);
    const text = this.shown(lines.join('\n'));
    // Below the margin a text would otherwise begin a page of its own.
    document.page.margins.bottom = 0;
    const height = document.heightOfString(text, { width });
    document.text(text, left, document.page.height - 14 - height, { width });
    document.page.margins.bottom = bottom;
  }

  private hasForm(codePoint: number): boolean {
    const { _font: font } = this.document as unknown as { _font: EmbeddedFont };
    return font.font.hasGlyphForCodePoint(codePoint);
  }
}

/** The font in use, as the library holds it. */
interface EmbeddedFont {
  font: { hasGlyphForCodePoint(codePoint: number): boolean };
}

function notShown(missing: number): string {
  const many = missing === 1 ? 'character has' : 'characters have';
  return `${missing} ${many} no form in the fonts of this print and stand as ${NO_FORM}. The record holds them as they were written.`;
}
