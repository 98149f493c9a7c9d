/** A value that has no canonical form we would stand by. `pointer` is the JSON pointer (RFC 6901) of the place. */
export class Unrecordable extends Error {
  override readonly name = 'Unrecordable';

  constructor(
    readonly pointer: string,
    readonly reason: string,
  ) {
    super(`The value at ${place(pointer)} ${reason}`);
  }
}

/** One more step of a JSON pointer, escaped as RFC 6901 asks. */
export function step(pointer: string, key: string | number): string {
  return `${pointer}/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`;
}

/** Keys come from outside: quoted, so that neither a control character nor a megabyte of key reaches a log line. */
function place(pointer: string): string {
  if (pointer === '') return 'the top';
  return JSON.stringify(pointer.length > 200 ? `${pointer.slice(0, 200)}...` : pointer);
}
