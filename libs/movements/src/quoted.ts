/** Text from outside, quoted short and on one line. */
export function quoted(text: string): string {
  return JSON.stringify(text.length > 60 ? `${text.slice(0, 60)}...` : text);
}
