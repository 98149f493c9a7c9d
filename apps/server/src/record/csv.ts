/**
 * Rows as CSV (RFC 4180): every cell quoted, lines ended by CR LF.
 *
 * A spreadsheet takes a cell that begins with =, +, -, @, a tab or a carriage return for a formula and carries it out, and
 * some take the wide forms of these signs too. Such a cell gets an apostrophe before it, which spreadsheets show as text;
 * line ends inside a cell become blanks.
 */
export function csv(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(text: string): string {
  const line = text.replace(/[\r\n\t\p{Cc}]+/gu, ' ');
  const harmless = /^[\s\p{Cf}]*[=+\-@\uff1d\uff0b\uff0d\uff20|%]/u.test(line) ? `'${line}` : line;
  return `"${harmless.replaceAll('"', '""')}"`;
}
