/**
 * Limits that the text of a file must keep before the YAML parser may build anything of it.
 *
 * The parser recurses for each level (a stack that runs out inside a regular expression ends the whole process) and
 * compares every key with every other. So the text is first read as a flat run of tokens, which costs little and grows
 * with the length alone.
 */
import { Lexer } from 'yaml';

const LONGEST_FILE = 5_000_000;
const MOST_TOKENS = 600_000;
const MOST_ALIASES = 100;
const DEEPEST_FLOW = 80;
/** Each level in block style stands further to the right, or has its own indicator on the line. */
const WIDEST_INDENT = 200;
const MOST_INDICATORS = 40;

const TOO_WIDE = new RegExp(`^ {${WIDEST_INDENT + 1}}`, 'm');

interface Seen {
  tokens: number;
  aliases: number;
  flow: number;
  indicators: number;
}

const reasonAt = (token: string, seen: Seen): string | null => {
  seen.tokens += 1;
  if (seen.tokens > MOST_TOKENS) return `the file holds more than ${MOST_TOKENS} words and signs`;
  switch (token[0]) {
    case '\n':
    case '\r':
      seen.indicators = 0;
      return null;
    case '[':
    case '{':
      seen.flow += 1;
      return seen.flow > DEEPEST_FLOW ? `the file is nested more than ${DEEPEST_FLOW} deep` : null;
    case ']':
    case '}':
      seen.flow -= 1;
      return null;
    case '&':
    case '*':
      seen.aliases += 1;
      return seen.aliases > MOST_ALIASES ? `the file has more than ${MOST_ALIASES} anchors and aliases` : null;
    case '!':
      return `the tag ${token.slice(0, 40)} is not allowed: only plain YAML is read`;
    case '-':
    case '?':
    case ':':
      if (token.length > 1 || seen.flow > 0) return null;
      seen.indicators += 1;
      return seen.indicators > MOST_INDICATORS ? `one line opens more than ${MOST_INDICATORS} levels` : null;
    default:
      return null;
  }
};

/** Why the text is not handed to the parser, or null when it may be. */
export const overLimit = (text: string): string | null => {
  if (text.length > LONGEST_FILE) return `the file is longer than ${LONGEST_FILE} characters`;
  if (TOO_WIDE.test(text)) return `a line is indented by more than ${WIDEST_INDENT} blanks`;
  const seen: Seen = { tokens: 0, aliases: 0, flow: 0, indicators: 0 };
  for (const token of new Lexer().lex(text)) {
    const reason = reasonAt(token, seen);
    if (reason !== null) return reason;
  }
  return null;
};
