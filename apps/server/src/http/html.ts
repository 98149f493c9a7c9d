/** HTML made of our own words and other people's texts: whatever is put into it is escaped, unless it is HTML of ours. */
export class Html {
  constructor(readonly text: string) {}
}

const ESCAPES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Good for text between tags and inside quoted attributes, and nowhere else: never put a text into a script or a style. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (character) => ESCAPES[character] ?? character);
}

type Part = string | number | Html | readonly Html[] | null;

/** `html`<p>${text}</p>``: null is nothing, a list of HTML is put in one after the other. */
export function html(strings: TemplateStringsArray, ...parts: Part[]): Html {
  return new Html(strings.reduce((text, string, index) => `${text}${write(parts[index - 1] ?? null)}${string}`));
}

function write(part: Part): string {
  if (part === null) return '';
  if (part instanceof Html) return part.text;
  if (typeof part === 'string' || typeof part === 'number') return escapeHtml(String(part));
  return part.map(({ text }) => text).join('');
}
