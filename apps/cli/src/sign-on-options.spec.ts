import { describe, expect, it } from 'vitest';
import { publicUrlOf, signOnOf } from './sign-on-options.js';

describe('the address of the pages', () => {
  it('is an origin, or is left out', () => {
    expect(publicUrlOf({})).toBeNull();
    expect(publicUrlOf({ PUBLIC_URL: 'https://proviso.example/' })).toBe('https://proviso.example');
  });

  it.each(['proviso.example', 'ftp://proviso.example', 'https://proviso.example/pages'])('is not %s', (url) => {
    expect(() => publicUrlOf({ PUBLIC_URL: url })).toThrow(`PUBLIC_URL ${url} is no address`);
  });
});

describe('the sign-on of somebody else', () => {
  const whole = {
    OPENID_ISSUER: 'https://login.example',
    OPENID_CLIENT_ID: 'proviso',
    OPENID_CLIENT_SECRET: 'hidden',
  };

  it('is there only where it is set up', () => {
    expect(signOnOf({})).toBeNull();
    expect(signOnOf(whole)).toEqual({
      name: 'Sign on at login.example',
      issuer: 'https://login.example',
      clientId: 'proviso',
      clientSecret: 'hidden',
    });
    expect(signOnOf({ ...whole, OPENID_NAME: 'Staff', OPENID_CLIENT_SECRET: '' })).not.toHaveProperty('clientSecret');
  });

  it('names what is missing or wrong, and no secret', () => {
    expect(() => signOnOf({ ...whole, OPENID_CLIENT_ID: '' })).toThrow(
      /^OPENID_ISSUER and OPENID_CLIENT_ID are both/,
    );
    expect(() => signOnOf({ ...whole, OPENID_ISSUER: 'login' })).toThrow(/^OPENID_ISSUER login is no address/);
  });
});
