/** A piece of a text; struck where it was corrected since. */
export interface Piece {
  text: string;
  struck: boolean;
}

/** The text in pieces: each of the words that were corrected is struck where it stands last, and nothing twice. */
export function struckPieces(text: string, corrected: readonly (string | null)[]): Piece[] {
  return corrected.reduce<Piece[]>(
    (pieces, was) => (was === null || was === '' ? pieces : strike(pieces, was)),
    [{ text, struck: false }],
  );
}

function strike(pieces: readonly Piece[], was: string): Piece[] {
  const index = pieces.findLastIndex(({ text, struck }) => !struck && text.includes(was));
  const piece = pieces[index];
  if (piece === undefined) return [...pieces];
  const at = piece.text.lastIndexOf(was);
  const parts = [
    { text: piece.text.slice(0, at), struck: false },
    { text: was, struck: true },
    { text: piece.text.slice(at + was.length), struck: false },
  ].filter(({ text }) => text !== '');
  return [...pieces.slice(0, index), ...parts, ...pieces.slice(index + 1)];
}
