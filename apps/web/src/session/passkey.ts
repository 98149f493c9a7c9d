/** What the browser is asked for, and what it answers, between JSON and bytes (WebAuthn). */
import { carryOut, freshKey, type Schemas } from '../api/client.js';
import { Problem } from '../api/problem.js';

type Asked = Schemas['PasskeyAsked'];

interface Options {
  challenge: string;
  user?: { id: string; name: string; displayName: string };
  allowCredentials?: { id: string; type: 'public-key' }[];
  excludeCredentials?: { id: string; type: 'public-key' }[];
}

/** An answer as it is sent: the challenge it belongs to, and what the browser said. */
export interface PasskeyAnswer {
  challenge: string;
  response: object;
}

/** Whether this page may ask for passkeys at all: it may not where it came by plain HTTP from another machine. */
export const passkeysHere = (): boolean => 'credentials' in navigator && window.isSecureContext;

/** Asks the server what to ask for, and the browser for it. Throws Problem. */
export async function passkeyFor(path: string, body: object = {}): Promise<PasskeyAnswer> {
  const { body: asked } = await carryOut<Asked>({ method: 'POST', path, body }, freshKey());
  const publicKey = readable(asked.options as Options) as unknown as PublicKeyCredentialRequestOptions;
  const given = await byHand(() => navigator.credentials.get({ publicKey }));
  const { clientDataJSON, authenticatorData, signature, userHandle } =
    given.response as AuthenticatorAssertionResponse;
  const handle = userHandle === null ? {} : { userHandle: textOf(userHandle) };
  const said = { clientDataJSON, authenticatorData, signature };
  return { challenge: asked.challenge, response: { ...named(given), response: { ...texts(said), ...handle } } };
}

/** Makes a new passkey for somebody who was proved to be that person. Throws Problem. */
export async function newPasskey(path: string, body: object): Promise<PasskeyAnswer> {
  const { body: asked } = await carryOut<Asked>({ method: 'POST', path, body }, freshKey());
  const publicKey = readable(asked.options as Options) as unknown as PublicKeyCredentialCreationOptions;
  const made = await byHand(() => navigator.credentials.create({ publicKey }));
  const response = made.response as AuthenticatorAttestationResponse;
  const { clientDataJSON, attestationObject } = response;
  const transports = response.getTransports();
  return {
    challenge: asked.challenge,
    response: { ...named(made), response: { ...texts({ clientDataJSON, attestationObject }), transports } },
  };
}

async function byHand(ask: () => Promise<Credential | null>): Promise<PublicKeyCredential> {
  const given = await ask().catch(() => null);
  if (given instanceof PublicKeyCredential) return given;
  throw new Problem(0, {
    title: 'No passkey was given, so nothing was sent',
    next: 'Try again, or use your secret.',
  });
}

const named = ({ id, rawId, type }: PublicKeyCredential) => ({
  id,
  rawId: textOf(rawId),
  type,
  clientExtensionResults: {},
});

const texts = (parts: Record<string, ArrayBuffer>): object =>
  Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, textOf(part)]));

function readable(options: Options): object {
  const ids = (list: Options['allowCredentials']) => (list ?? []).map((one) => ({ ...one, id: bytesOf(one.id) }));
  return {
    ...options,
    challenge: bytesOf(options.challenge),
    ...(options.user ? { user: { ...options.user, id: bytesOf(options.user.id) } } : {}),
    allowCredentials: ids(options.allowCredentials),
    excludeCredentials: ids(options.excludeCredentials),
  };
}

function bytesOf(text: string): Uint8Array {
  return Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (letter) => letter.charCodeAt(0));
}

function textOf(bytes: ArrayBuffer): string {
  const letters = [...new Uint8Array(bytes)].map((byte) => String.fromCharCode(byte)).join('');
  return btoa(letters).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}
