/**
 * What a new secret must be: long, and none that is tried first. No mixture of letters and signs is asked for, and it
 * never has to be changed by the calendar (NIST SP 800-63B section 3.1.1, OWASP ASVS: FROM MEMORY).
 */
const LEAST_CHARACTERS = 12;

/** Words that guesses are made of; what is left of a secret without them must still be long enough to be one. */
const GUESSED = [
  'password',
  'passwort',
  'secret',
  'proviso',
  'welcome',
  'admin',
  'qwertz',
  'qwerty',
  'letmein',
  'aircraft',
];

/** @returns why it is none, in words; null when it is good */
export function misfitOfSecret(secret: string, about: readonly string[]): string | null {
  if ([...secret].length < LEAST_CHARACTERS) return `is shorter than ${LEAST_CHARACTERS} characters`;
  const plain = secret.toLowerCase();
  const known = [...GUESSED, ...about.map((word) => word.toLowerCase()).filter((word) => word.length > 2)];
  const left = known.reduce((text, word) => text.replaceAll(word, ''), plain);
  if (new Set(left.replace(/[\d\W_]/g, '')).size < 4 && new Set(plain).size < 10)
    return 'is made of what is guessed first';
  if (left.length < LEAST_CHARACTERS / 2) return 'is made of what is guessed first';
  return null;
}
