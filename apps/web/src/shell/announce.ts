/** What was just done, carried to the next page and said aloud there. */
let carried: Said | null = null;
const listeners = new Set<(text: string) => void>();

export interface Said {
  title: string;
  lines: string[];
}

/** Shown at the top of the page that opens next. */
export function carryOver(said: Said): void {
  carried = said;
}

export function takeCarried(): Said | null {
  const said = carried;
  carried = null;
  return said;
}

/** Says a status message to people who do not see the page change (WCAG 4.1.3). */
export function announce(text: string): void {
  for (const listener of listeners) listener(text);
}

export function onAnnounce(listener: (text: string) => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
