/** The first words of a text, with an ellipsis where more follows; a word is cut only when it alone is too long. */
export function firstWords(text: string, most: number): string {
  const line = text.replace(/\s+/g, ' ').trim();
  if (line.length <= most) return line;
  const room = line.slice(0, most - 1);
  const end = line[most - 1] === ' ' ? room.length : room.lastIndexOf(' ');
  const words = end > 0 ? room.slice(0, end) : wholeCharacters(room);
  return `${words.replace(/[\s.,;:!?-]+$/, '')}…`;
}

/** Never half of a surrogate pair at the end. */
function wholeCharacters(text: string): string {
  return /[\ud800-\udbff]$/.test(text) ? text.slice(0, -1) : text;
}
