/** A mistake in how the command was called, or in a file or address it was given: one line, exit 2. */
export class UsageError extends Error {}
