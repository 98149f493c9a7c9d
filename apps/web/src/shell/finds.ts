/**
 * Whether every word that was typed stands in the text. Case, accents and hyphens do not count: `qkea` finds `Q-KEA`.
 * Nothing typed finds everything.
 */
export function finds(typed: string, text: string): boolean {
  const within = plain(text);
  return plain(typed)
    .split(/\s+/)
    .every((word) => within.includes(word));
}

const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/[\p{M}\p{Pd}]/gu, '')
    .toLowerCase();
