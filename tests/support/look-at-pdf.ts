/** Renders a page of a PDF to pixels, as a reader of codes sees it. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface Pixels {
  data: Uint8ClampedArray;
  width: number;
  height: number;
  png(): Buffer;
}

interface Canvas {
  toBuffer(type: 'image/png'): Buffer;
}
interface Context {
  getImageData(left: number, top: number, width: number, height: number): { data: Uint8ClampedArray };
}
interface CanvasMaker {
  create(width: number, height: number): { canvas: Canvas; context: Context };
}

/**
 * @param number of the page, from 1
 * @param scale pixels for each point
 * @param part of the page from its top left: 1 the whole, 0.5 half of its width and height
 */
export async function pixelsOf(bytes: Uint8Array, number: number, scale: number, part = 1): Promise<Pixels> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const document = await task.promise;
  const page = await document.getPage(number);
  const viewport = page.getViewport({ scale });
  const [width, height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)];
  const { canvas, context } = (document.canvasFactory as CanvasMaker).create(width, height);
  await page.render({ canvas: null, canvasContext: context as never, viewport }).promise;
  const { data } = context.getImageData(0, 0, Math.floor(width * part), Math.floor(height * part));
  const png = canvas.toBuffer('image/png');
  await task.destroy();
  return { data, width: Math.floor(width * part), height: Math.floor(height * part), png: () => png };
}
