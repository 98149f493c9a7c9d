import { sayInstant } from './say-time.js';

/** A first secret, shown once, and what it is good for. */
export function firstSecretWords(name: string, signIn: string, secret: string, until: string): string[] {
  return [
    `${name} signs in as ${signIn} with the first secret, shown this once:`,
    '',
    `    ${secret}`,
    '',
    `Good until ${sayInstant(until)}, and for one thing: choosing a secret of their own.`,
    'Hand it over in person; whoever has it could choose in their place.',
  ];
}
