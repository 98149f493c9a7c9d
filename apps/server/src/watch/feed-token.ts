/**
 * The token in the address of a feed: which operator's rows to look at, and 32 bytes that nobody can guess. The operator
 * stands in it so that the database shows the rows of that operator alone while the token is looked up.
 */
import { createHash, randomBytes } from 'node:crypto';

const SHAPE = /^[\w-]{64}$/;
const OPERATOR_BYTES = 16;

export function newFeedToken(operatorId: string): string {
  const operator = Buffer.from(operatorId.replaceAll('-', ''), 'hex');
  return Buffer.concat([operator, randomBytes(32)]).toString('base64url');
}

/** Whose rows a token asks for; null when it is no token. */
export function operatorOfToken(token: string): string | null {
  if (!SHAPE.test(token)) return null;
  const hex = Buffer.from(token, 'base64url').subarray(0, OPERATOR_BYTES).toString('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}

export function hashOfToken(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
