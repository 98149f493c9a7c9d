/** Somebody else changed the row first, or it is not there: nothing was changed. */
export class StaleVersion extends Error {
  override readonly name = 'StaleVersion';

  constructor(
    readonly noun: string,
    readonly id: string,
    readonly seen: number,
  ) {
    super(`The ${noun} ${id} is no longer at version ${seen}.`);
  }
}
