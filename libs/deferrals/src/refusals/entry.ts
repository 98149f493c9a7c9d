/** One line of the catalogue. `{name}` in a text stands for the fact of that name; a list is joined by "; ". */
export interface RefusalEntry {
  sentence: string;
  /** What to do next. */
  next: string;
  /** The paragraph the rule comes from. */
  paragraph: string;
}
