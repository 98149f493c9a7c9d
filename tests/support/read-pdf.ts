/** Reads a PDF back with a library that shares nothing with the one that made it. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadPdf {
  title: string;
  /** The text of each page, its pieces in the order in which they stand, line ends as blanks. */
  pages: string[];
  /** Width and height of each page in points. */
  sizes: [width: number, height: number][];
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false });
  const document = await task.promise;
  const { info } = await document.getMetadata();
  const read: ReadPdf = { title: String((info as { Title?: string }).Title ?? ''), pages: [], sizes: [] };
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const { items } = await page.getTextContent();
    const pieces = items.map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : ''));
    read.pages.push(pieces.join('').replace(/\s+/g, ' ').trim());
    const [, , width = 0, height = 0] = page.view;
    read.sizes.push([width, height]);
  }
  await task.destroy();
  return read;
}

/** Everything in a PDF that does something by itself or when it is pressed: scripts, actions, links, attached files. */
export async function activeIn(bytes: Uint8Array): Promise<string[]> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false });
  const document = await task.promise;
  const found: string[] = [];
  if ((await document.getJSActions()) !== null) found.push('script');
  if ((await document.getOpenAction()) !== null) found.push('action on opening');
  if ((await document.getAttachments()) !== null) found.push('attached file');
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const annotations = (await page.getAnnotations()) as { subtype: string; url?: string }[];
    found.push(...annotations.map(({ subtype, url }) => `${subtype} ${url ?? ''}`.trim()));
  }
  await task.destroy();
  return found;
}
