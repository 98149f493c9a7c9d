import QRCode from 'qrcode';

/** A QR code as its squares: true is dark. Without the quiet zone, which must stay blank round it. */
export interface QrSquares {
  size: number;
  dark: (row: number, column: number) => boolean;
}

/** Squares that must stay blank on each side (ISO/IEC 18004). */
export const QUIET = 4;

/** At level M a reader makes good for about 15 % of it dirtied or scratched. */
export function qrSquares(text: string): QrSquares {
  const { modules } = QRCode.create(text, { errorCorrectionLevel: 'M' });
  return { size: modules.size, dark: (row, column) => modules.get(row, column) === 1 };
}

/** Draws it with its quiet zone into a square of this width, in points. */
export function drawQr(document: PDFKit.PDFDocument, text: string, left: number, top: number, width: number): void {
  const { size, dark } = qrSquares(text);
  const step = width / (size + 2 * QUIET);
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1) {
      // A hair wider than the step, so that no white line shows between two dark squares.
      if (dark(row, column)) {
        document.rect(left + (column + QUIET) * step, top + (row + QUIET) * step, step * 1.02, step * 1.02);
      }
    }
  }
  document.fill('black');
}
