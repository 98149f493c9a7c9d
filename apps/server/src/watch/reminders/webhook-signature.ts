/**
 * Signatures of messages to endpoints, as Standard Webhooks has them (SEEN): HMAC-SHA256 over `id.timestamp.body`, base64,
 * each with its version before it. Several secrets give several signatures, so that a reader can change over from one to
 * the next.
 */
import { createHmac, randomBytes } from 'node:crypto';

const PREFIX = 'whsec_';
const SECRET_BYTES = 32;

/** As it is told to the reader, once: `whsec_` and base64. */
export function newWebhookSecret(): string {
  return `${PREFIX}${randomBytes(SECRET_BYTES).toString('base64')}`;
}

export interface Signable {
  /** Says which message it is: the same one when it is sent again. */
  id: string;
  /** Of this attempt, Unix seconds; readers refuse one that is more than five minutes off. */
  timestamp: number;
  body: string;
}

/** @param secrets with or without `whsec_` before them, the newest first */
export function webhookHeaders(
  { id, timestamp, body }: Signable,
  secrets: readonly string[],
): Record<string, string> {
  const signed = `${id}.${timestamp}.${body}`;
  const signatures = secrets.map((secret) => {
    const key = Buffer.from(secret.startsWith(PREFIX) ? secret.slice(PREFIX.length) : secret, 'base64');
    return `v1,${createHmac('sha256', key).update(signed).digest('base64')}`;
  });
  return {
    'webhook-id': id,
    'webhook-timestamp': String(timestamp),
    'webhook-signature': signatures.join(' '),
  };
}
