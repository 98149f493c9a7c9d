import { checkMel, findingLine, type MelCheck } from '#mel';
import type { Command } from '../command.js';
import { readText } from '../read-file.js';
import { count } from '../words/say-time.js';

export const melCheck: Command = {
  name: 'mel check',
  summary: 'every error of a MEL file',
  files: [{ name: 'FILE', about: 'the MEL, YAML or JSON' }],
  options: [],
  examples: ['mel check seed/mel.yaml'],
  exitsWithOne: 'the file has an error; a server would load nothing of it',
  async run({ files: [file = ''] }) {
    const check = checkMel(await readText(file), file);
    return { value: check, words: words(check), exit: check.findings.length === 0 ? 0 : 1 };
  },
};

function words({ file, findings, holds }: MelCheck): string {
  if (holds === null) {
    return [
      ...findings.map(findingLine),
      `${count(findings.length, 'finding')}: nothing of the file can be used.`,
    ].join('\n');
  }
  const { document, revision, aircraftType, entries, rows, incomplete } = holds;
  return [
    `${file}: no findings.`,
    `${document}, revision ${revision}, for ${aircraftType}: ${count(entries, 'entry', 'entries')}, ${count(rows, 'row')}.`,
    ...(incomplete.length === 0
      ? []
      : [`Held only in part, so never better than not settled: ${incomplete.join(', ')}.`]),
  ].join('\n');
}
