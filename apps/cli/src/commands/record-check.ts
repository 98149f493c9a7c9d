import type { KeyObject } from 'node:crypto';
import { checkProof, headFormat, isHeadSignedBy, type ProofCheck, type SignedHead } from '#record';
import type { Command } from '../command.js';
import { needed } from '../options.js';
import { jsonIn, publicKeyIn } from '../signed-file.js';
import { UsageError } from '../usage-error.js';
import { count } from '../words/say-time.js';

export const recordCheck: Command = {
  name: 'record check',
  summary: 'check a proof or an exported history without any database',
  files: [{ name: 'FILE', about: 'a proof, an exported history or a signed head' }],
  options: [
    { name: 'key', value: 'PUBLIC-KEY.pem', about: 'the public key that heads are signed with', must: true },
    { name: 'held', value: 'HEAD.json', about: 'a head you kept: does the record still begin with it?' },
  ],
  examples: ['record check proof.json --key head-key.public.pem'],
  exitsWithOne: 'something does not fit',
  async run(given) {
    const [path = ''] = given.files;
    const key = await publicKeyIn(needed(given, 'key'));
    const held = given.options.get('held');
    const value = await jsonIn(path);
    if (isHeadFile(value)) return headChecked(path, value, key);
    const check = checkProof(value, { key, ...(held === undefined ? {} : { held: await headIn(held) }) });
    return { value: check, words: words(path, check), exit: check.fits ? 0 : 1 };
  },
};

const NOT_SHOWN =
  'Not shown: that what the entries say is true, that there are no other entries about the same thing, and who stands behind a reference.';

function words(path: string, { fits, findings, head, signedAt, entries, grownFrom }: ProofCheck): string {
  if (!fits || head === null) {
    return [`${path}: does not fit.`, ...findings.map(({ where, sentence }) => `  ${where}: ${sentence}`)].join('\n');
  }
  const grown = grownFrom === null ? '' : ` It begins with the record of ${grownFrom}, unaltered.`;
  const stand = entries === 1 ? 'stands' : 'stand';
  const shown = `${count(entries, 'entry', 'entries')} ${stand} word for word in the record of ${head.size}, signed ${signedAt}.`;
  return `${path}: fits. ${shown}${grown}\n${NOT_SHOWN}`;
}

function headChecked(path: string, head: SignedHead, key: KeyObject) {
  const fits = isHeadSignedBy(head, key);
  const { size, root, signedAt } = head;
  const said = fits
    ? `fits. The record of ${count(size, 'entry', 'entries')} had the root ${root} when it was signed ${signedAt}.`
    : 'does not fit: this head was not signed with this key, or was altered since.';
  return {
    value: { fits, head: { size, root } },
    words: `${path}: ${said}`,
    exit: fits ? (0 as const) : (1 as const),
  };
}

function isHeadFile(value: unknown): value is SignedHead {
  return typeof value === 'object' && value !== null && (value as { format?: unknown }).format === headFormat;
}

async function headIn(path: string): Promise<SignedHead> {
  const value = await jsonIn(path);
  if (isHeadFile(value)) return value;
  throw new UsageError(`${path}: is no signed head of a record`);
}
