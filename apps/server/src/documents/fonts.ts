/** The fonts that travel inside every print: a reader's machine need not have them, and names stand as people write them. */
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const FOLDER = join(dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')), 'ttf');

export const FONTS = {
  plain: join(FOLDER, 'DejaVuSans.ttf'),
  strong: join(FOLDER, 'DejaVuSans-Bold.ttf'),
  /** For hashes: each character as wide as the next. */
  even: join(FOLDER, 'DejaVuSansMono.ttf'),
} as const;

export type FontName = keyof typeof FONTS;

/** Stands where a font has no form for a character. */
export const NO_FORM = '\u25a1';

export interface Printable {
  text: string;
  /** How many characters stand as NO_FORM. */
  missing: number;
}

/**
 * The text as the font can show it. What it has no form for is replaced and counted, so that the print can say so; control
 * characters become blanks.
 */
export function printable(text: string, hasForm: (codePoint: number) => boolean): Printable {
  let missing = 0;
  const shown = [...text.normalize('NFC')].map((character) => {
    if (character === '\n') return character;
    if (/\p{Cc}|\p{Cf}/u.test(character)) return ' ';
    if (hasForm(character.codePointAt(0) ?? 0)) return character;
    missing += 1;
    return NO_FORM;
  });
  return { text: shown.join(''), missing };
}
