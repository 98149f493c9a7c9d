/** Standard Webhooks: the vector of its own tests (SEEN), and its reference verifier. */
import fc from 'fast-check';
import { Webhook } from 'standardwebhooks';
import { describe, expect, it } from 'vitest';
import { newWebhookSecret, webhookHeaders } from './webhook-signature.js';

const VECTOR = {
  id: 'msg_p5jXN8AQM9LWM0D4loKWxJek',
  timestamp: 1614265330,
  body: '{"test": 2432232314}',
};
const SECRET = 'MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw';

describe('the signature of a message', () => {
  it('is that of the published vector, with the prefix of the secret and without', () => {
    const signature = 'v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=';
    for (const secret of [SECRET, `whsec_${SECRET}`]) {
      expect(webhookHeaders(VECTOR, [secret])).toEqual({
        'webhook-id': VECTOR.id,
        'webhook-timestamp': '1614265330',
        'webhook-signature': signature,
      });
    }
  });

  it('is accepted by the reference verifier for any text, by a reader of either secret and by no other', () => {
    const timestamp = Math.floor(Date.now() / 1000);
    fc.assert(
      fc.property(fc.uuid(), fc.jsonValue(), (id, value) => {
        const body = JSON.stringify(value);
        const [newer, older, foreign] = [newWebhookSecret(), newWebhookSecret(), newWebhookSecret()];
        const headers = webhookHeaders({ id, timestamp, body }, [newer, older]);
        for (const secret of [newer, older])
          expect(new Webhook(secret).verify(body, headers)).toEqual(JSON.parse(body));
        expect(() => new Webhook(foreign).verify(body, headers)).toThrow('No matching signature found');
        expect(() => new Webhook(newer).verify(`${body} `, headers)).toThrow('No matching signature found');
      }),
    );
  });

  it('is made with a secret of 24 to 64 bytes, as the standard asks, and never the same one twice', () => {
    const secrets = Array.from({ length: 50 }, newWebhookSecret);
    for (const secret of secrets) expect(Buffer.from(secret.slice(6), 'base64')).toHaveLength(32);
    expect(new Set(secrets).size).toBe(50);
  });

  it('is refused by the reference verifier when it is more than five minutes old', () => {
    const secret = newWebhookSecret();
    const at = (seconds: number) => ({ ...VECTOR, timestamp: Math.floor(Date.now() / 1000) - seconds });
    expect(() => new Webhook(secret).verify(VECTOR.body, webhookHeaders(at(310), [secret]))).toThrow(
      'Message timestamp too old',
    );
    expect(new Webhook(secret).verify(VECTOR.body, webhookHeaders(at(280), [secret]))).toEqual({ test: 2432232314 });
  });
});
