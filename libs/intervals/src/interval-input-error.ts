/**
 * Bad input to a calculation of time: an instant, a zone, an interval text or a number that cannot be what it claims.
 *
 * `field` names the argument, `given` is what stood there, the message is a whole sentence that names both.
 */
export class IntervalInputError extends Error {
  constructor(
    readonly field: string,
    readonly given: unknown,
    readonly because: string,
  ) {
    super(`${field} ${show(given)} ${because}`);
    this.name = 'IntervalInputError';
  }
}

/** A hostile value is quoted short and on one line, so that it can stand in a log or on a page. */
function show(given: unknown): string {
  const text = typeof given === 'string' ? given : (JSON.stringify(given) ?? String(given));
  return JSON.stringify(text.length > 60 ? `${text.slice(0, 60)}...` : text);
}
