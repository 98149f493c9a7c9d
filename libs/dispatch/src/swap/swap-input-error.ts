/** A question about a swap that cannot be what it claims to be; the message is a sentence naming the value. */
export class SwapInputError extends Error {
  override readonly name = 'SwapInputError';
}
