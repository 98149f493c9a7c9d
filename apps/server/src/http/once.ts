/** One unsafe request, done once, in one transaction: the change, its record and the answer stand or fall together. */
import { createHash } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { KeptMeanwhile, type Store, type Tx } from '#store';
import { checkBody } from './body-hygiene.js';
import { etag, idempotencyKey } from './headers.js';
import { Problem } from './problem.js';
import type { Session } from './session.js';

export interface Done {
  status: 200 | 201;
  body: object;
  /** Version of what was changed, for the ETag. */
  version?: number;
}

/**
 * Claims the client's key, does the work, keeps the answer. A request that was refused keeps nothing: it may be sent again
 * under the same key once its cause is gone. Sent again after it was done, it is answered as the first time.
 */
export async function once(
  store: Store,
  session: Session,
  request: FastifyRequest,
  reply: FastifyReply,
  work: (tx: Tx) => Promise<Done>,
): Promise<object> {
  checkBody(request.body);
  const key = idempotencyKey(request);
  const fingerprint = fingerprintOf(request);
  try {
    const kept = await store.withOperator(session.operatorId, session.personId, async (tx) => {
      const claim = await tx.idempotency.claim(key, fingerprint);
      if (claim.state === 'done') return claim.response;
      if (claim.state === 'under-way')
        throw new Problem('idempotency-key-in-use', 'The first one is not answered yet.');
      if (claim.state === 'other-request') {
        throw new Problem('idempotency-key-reused', 'Another request was sent under this key.');
      }
      const done = await work(tx);
      const headers: Record<string, string> = done.version === undefined ? {} : { etag: etag(done.version) };
      const response = { status: done.status, headers, body: JSON.stringify(done.body) };
      tx.send(tx.idempotency.keep(key, fingerprint, response));
      return response;
    });
    void reply.status(kept.status).headers(kept.headers);
    return JSON.parse(kept.body) as object;
  } catch (error) {
    if (error instanceof KeptMeanwhile) throw new Problem('idempotency-key-in-use', error.message);
    if (isEnteredTwice(error)) throw new Problem('entered-meanwhile', 'It was not entered a second time.');
    throw error;
  }
}

/** What the database lets only one of two have who enter the same at the same moment. */
const ONCE_EACH = [
  'hold_once',
  'aircraft_registration',
  'station_pkey',
  'organisation_approval',
  'authorisation_number',
  'manual_revision_once',
];

const isEnteredTwice = (error: unknown): boolean =>
  error instanceof Error && 'constraint' in error && ONCE_EACH.includes(String(error.constraint));

/** What proves the signer: another one each time, and never kept, not even as a hash. */
const PROOFS = ['secret', 'passkey', 'signedOn'];

/** Equal requests have equal fingerprints; how the signer was proved makes no difference. */
function fingerprintOf(request: FastifyRequest): string {
  const body = JSON.stringify(request.body ?? null, (key, value: unknown) =>
    PROOFS.includes(key) ? undefined : value,
  );
  return createHash('sha256')
    .update([request.method, request.url, request.headers['if-match'] ?? '', body].join('\n'))
    .digest('hex');
}
