/** Where people open the pages, and the sign-on of somebody else that they may come in by: from the environment alone. */
import { UsageError } from './usage-error.js';

export interface SignOnAsked {
  name: string;
  issuer: string;
  clientId: string;
  clientSecret?: string;
}

type Environment = Record<string, string | undefined>;

/** @throws UsageError naming the variable, and never a secret */
export function publicUrlOf({ PUBLIC_URL: url = '' }: Environment): string | null {
  if (url === '') return null;
  const right = URL.canParse(url) && /^https?:$/.test(new URL(url).protocol) && new URL(url).pathname === '/';
  if (!right) throw new UsageError(`PUBLIC_URL ${url} is no address such as https://proviso.example.org`);
  return new URL(url).origin;
}

/** @throws UsageError naming the variable, and never a secret */
export function signOnOf(env: Environment): SignOnAsked | null {
  const {
    OPENID_ISSUER: issuer = '',
    OPENID_CLIENT_ID: clientId = '',
    OPENID_CLIENT_SECRET: clientSecret = '',
  } = env;
  if (issuer === '' && clientId === '') return null;
  if (issuer === '' || clientId === '') {
    throw new UsageError('OPENID_ISSUER and OPENID_CLIENT_ID are both needed for people to sign on elsewhere');
  }
  if (!URL.canParse(issuer) || !/^https?:$/.test(new URL(issuer).protocol)) {
    throw new UsageError(`OPENID_ISSUER ${issuer} is no address such as https://login.example.org`);
  }
  const name = env['OPENID_NAME'] || `Sign on at ${new URL(issuer).hostname}`;
  return { name, issuer, clientId, ...(clientSecret === '' ? {} : { clientSecret }) };
}
