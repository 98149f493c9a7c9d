/** How wide a terminal is taken to be. */
export const WIDTH = 80;

/** The words of a text in lines of at most `WIDTH`, each after the first under `indent`. A longer word stays whole. */
export function wrapped(words: readonly string[], first: string, indent: string): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of words) {
    const next = empty ? line + word : `${line} ${word}`;
    if (next.length > WIDTH && !empty) {
      lines.push(line);
      line = indent + word;
    } else {
      line = next;
    }
    empty = false;
  }
  return [...lines, line];
}

export const sentence = (text: string, first: string, indent = first): string[] =>
  wrapped(text.split(' '), first, indent);
