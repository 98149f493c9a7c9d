/**
 * An authenticator in software (WebAuthn level 3): makes a key, and signs what a browser would hand it. Written from the
 * standard and sharing no code with the library that checks it; it also does what an honest one never does.
 */
import { createHash, generateKeyPairSync, type KeyObject, randomBytes, sign } from 'node:crypto';

export interface Asked {
  challenge: string;
  options: { challenge: string };
}

export interface Lies {
  origin?: string;
  rpId?: string;
  /** True where it did not look who holds it. */
  unverified?: boolean;
  /** Instead of counting on. */
  counter?: number;
  challenge?: string;
  type?: string;
}

const sha256 = (data: string | Buffer): Buffer => createHash('sha256').update(data).digest();

export class SoftAuthenticator {
  private readonly id = randomBytes(16);
  private readonly keys = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  private counter = 0;

  constructor(
    private readonly origin: string,
    private readonly userHandle = '',
  ) {}

  /** Answers `navigator.credentials.create` as JSON. */
  create({ challenge, options }: Asked, lies: Lies = {}): object {
    const clientDataJSON = this.clientData('webauthn.create', options.challenge, lies);
    const attested = Buffer.concat([
      Buffer.alloc(16),
      Buffer.from([0, this.id.length]),
      this.id,
      coseKey(this.keys.publicKey),
    ]);
    const authData = Buffer.concat([this.head(lies, 0x40), attested]);
    const attestationObject = map([
      [text('fmt'), text('none')],
      [text('attStmt'), map([])],
      [text('authData'), bytes(authData)],
    ]);
    const response = {
      clientDataJSON: clientDataJSON.toString('base64url'),
      attestationObject: attestationObject.toString('base64url'),
    };
    return { challenge, response: { ...this.named(), response } };
  }

  /** Answers `navigator.credentials.get` as JSON. */
  get({ challenge, options }: Asked, lies: Lies = {}): { challenge: string; response: Record<string, unknown> } {
    const clientDataJSON = this.clientData('webauthn.get', options.challenge, lies);
    const authenticatorData = this.head(lies, 0);
    const signed = Buffer.concat([authenticatorData, sha256(clientDataJSON)]);
    const response = {
      clientDataJSON: clientDataJSON.toString('base64url'),
      authenticatorData: authenticatorData.toString('base64url'),
      signature: sign('sha256', signed, this.keys.privateKey).toString('base64url'),
      ...(this.userHandle === '' ? {} : { userHandle: this.userHandle }),
    };
    return { challenge, response: { ...this.named(), response } };
  }

  private named() {
    const id = this.id.toString('base64url');
    return { id, rawId: id, type: 'public-key', clientExtensionResults: {} };
  }

  private clientData(type: string, challenge: string, lies: Lies): Buffer {
    const origin = lies.origin ?? this.origin;
    return Buffer.from(
      JSON.stringify({ type: lies.type ?? type, challenge: lies.challenge ?? challenge, origin, crossOrigin: false }),
    );
  }

  /** Hash of the name, flags (present, verified, and those given), and the counter. */
  private head({ rpId = new URL(this.origin).hostname, unverified = false, counter }: Lies, flags: number): Buffer {
    this.counter = counter ?? this.counter + 1;
    const count = Buffer.alloc(4);
    count.writeUInt32BE(this.counter);
    return Buffer.concat([sha256(rpId), Buffer.from([flags | (unverified ? 0x01 : 0x05)]), count]);
  }
}

/** CBOR of lengths below 65,536 (RFC 8949). */
function head(major: number, length: number): Buffer {
  if (length < 24) return Buffer.from([(major << 5) | length]);
  if (length < 256) return Buffer.from([(major << 5) | 24, length]);
  return Buffer.from([(major << 5) | 25, length >> 8, length & 0xff]);
}

const bytes = (data: Buffer): Buffer => Buffer.concat([head(2, data.length), data]);
const text = (words: string): Buffer => Buffer.concat([head(3, words.length), Buffer.from(words)]);
const whole = (value: number): Buffer => (value < 0 ? head(1, -1 - value) : head(0, value));
const map = (pairs: [Buffer, Buffer][]): Buffer => Buffer.concat([head(5, pairs.length), ...pairs.flat()]);

/** ES256 on P-256 (RFC 9053). */
function coseKey(key: KeyObject): Buffer {
  const { x = '', y = '' } = key.export({ format: 'jwk' });
  return map([
    [whole(1), whole(2)],
    [whole(3), whole(-7)],
    [whole(-1), whole(1)],
    [whole(-2), bytes(Buffer.from(x, 'base64url'))],
    [whole(-3), bytes(Buffer.from(y, 'base64url'))],
  ]);
}
