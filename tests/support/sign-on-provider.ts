/** A real OpenID provider in this process, whose one person at the keyboard does what the test says. */
import { generateKeyPairSync, type JsonWebKey, type KeyObject, randomUUID, sign } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import Provider from 'oidc-provider';

export interface Claims {
  iss: string;
  sub: string;
  aud: string | string[];
  exp: number;
  iat: number;
  nonce?: string;
  auth_time?: number;
}

/** Changes what the provider's token says before it is signed again. */
export type Forgery = (claims: Claims) => {
  claims?: Partial<Claims>;
  header?: object;
  key?: KeyObject;
  raw?: string;
};

export class SignOnProvider {
  /** Who signs on at the keyboard. */
  account = 'subject-of-nobody';
  /** What a thief between provider and server puts in place of the token; null: the real one passes. */
  forgery: Forgery | null = null;
  /** The token that passed last. */
  lastToken = '';

  private constructor(
    private readonly server: Server,
    private readonly keys: { privateKey: KeyObject; publicKey: KeyObject },
    readonly issuer: string,
  ) {}

  /** @param port absent: a free one */
  static async start(clients: { id: string; redirect: string }[], port = 0): Promise<SignOnProvider> {
    const keys = generateKeyPairSync('rsa', { modulusLength: 2048 });
    let handle: (request: IncomingMessage, response: ServerResponse) => void = () => undefined;
    const server = createServer((request, response) => handle(request, response));
    await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
    const issuer = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const made = new SignOnProvider(server, keys, issuer);
    const provider = made.provider(clients);
    const answer = provider.callback();
    handle = (request, response) => {
      if (request.url?.startsWith('/interaction/')) void made.interact(provider, request, response);
      else void answer(request, response);
    };
    return made;
  }

  /** What the server asks the provider with; tokens pass through the thief's hands. */
  readonly fetch: typeof fetch = async (address, options) => {
    const response = await fetch(address, options);
    if (!String(address).endsWith('/token') || !response.ok) return response;
    const body = (await response.json()) as { id_token: string };
    if (this.forgery) body.id_token = this.forged(body.id_token, this.forgery);
    this.lastToken = body.id_token;
    return Response.json(body);
  };

  /** Goes where the server sends the browser. @returns where the provider sends it back to */
  async walk(address: string): Promise<string> {
    const cookies = new Map<string, string>();
    let next = address;
    for (let step = 0; step < 10; step += 1) {
      const cookie = [...cookies].map(([name, value]) => `${name}=${value}`).join('; ');
      const response = await fetch(next, { redirect: 'manual', headers: { cookie } });
      for (const line of response.headers.getSetCookie()) {
        const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(line) ?? [];
        cookies.set(name, value);
      }
      const location = response.headers.get('location');
      if (location === null) throw new Error(`${next}: ${response.status} ${await response.text()}`);
      next = new URL(location, next).href;
      if (!next.startsWith(this.issuer)) return next;
    }
    throw new Error('The provider never sent the browser back.');
  }

  stop(): Promise<void> {
    this.server.closeAllConnections();
    return new Promise((resolve) => this.server.close(() => resolve()));
  }

  private provider(clients: { id: string; redirect: string }[]): Provider {
    const jwk = {
      ...(this.keys.privateKey.export({ format: 'jwk' }) as JsonWebKey),
      kid: 'k1',
      alg: 'RS256',
      use: 'sig',
    };
    return new Provider(this.issuer, {
      clients: clients.map(({ id, redirect }) => ({
        client_id: id,
        client_secret: `secret of ${id}`,
        redirect_uris: [redirect],
        token_endpoint_auth_method: 'client_secret_post',
        require_auth_time: true,
      })),
      jwks: { keys: [jwk as never] },
      cookies: { keys: [randomUUID()] },
      features: { devInteractions: { enabled: false } },
      interactions: { url: (_context, { uid }) => `/interaction/${uid}` },
      findAccount: (_context, id) => ({ accountId: id, claims: () => ({ sub: id }) }),
      pkce: { required: () => true },
    });
  }

  private async interact(provider: Provider, request: IncomingMessage, response: ServerResponse): Promise<void> {
    const { prompt, params, session } = await provider.interactionDetails(request, response);
    if (prompt.name === 'login') {
      return provider.interactionFinished(request, response, { login: { accountId: this.account } });
    }
    const grant = new provider.Grant({
      accountId: session?.accountId ?? '',
      clientId: String(params['client_id']),
    });
    grant.addOIDCScope('openid');
    return provider.interactionFinished(request, response, { consent: { grantId: await grant.save() } });
  }

  private forged(token: string, forgery: Forgery): string {
    const [header = '', payload = ''] = token.split('.');
    const read = <T>(part: string): T => JSON.parse(Buffer.from(part, 'base64url').toString('utf8')) as T;
    const claims = read<Claims>(payload);
    const change = forgery(claims);
    if (change.raw !== undefined) return change.raw;
    const write = (part: object): string => Buffer.from(JSON.stringify(part)).toString('base64url');
    const text = `${write({ ...read<object>(header), ...change.header })}.${write({ ...claims, ...change.claims })}`;
    const signature = sign('sha256', Buffer.from(text), change.key ?? this.keys.privateKey);
    return `${text}.${signature.toString('base64url')}`;
  }
}
