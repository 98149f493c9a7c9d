/** Passkeys in a browser: by name, and with the authenticator that the browser itself pretends to have. */
import type { Page } from 'playwright-core';
import type { Site } from './site.js';

/** A page of somebody not signed in. A passkey is bound to a name; the server's own address is a number. */
export async function atLocalhost(site: Site): Promise<Page> {
  const visitor = await site.visitor();
  const protocol = await visitor.context().newCDPSession(visitor);
  await protocol.send('WebAuthn.enable');
  await protocol.send('WebAuthn.addVirtualAuthenticator', {
    options: {
      protocol: 'ctap2',
      transport: 'internal',
      hasResidentKey: true,
      hasUserVerification: true,
      isUserVerified: true,
      automaticPresenceSimulation: true,
    },
  });
  await visitor.goto(site.server.url.replace('127.0.0.1', 'localhost'));
  return visitor;
}
