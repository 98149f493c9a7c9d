import { checkAgainst, type AgainstFinding } from '#mel';
import type { Command } from '../command.js';
import { headOf, melFrom } from '../mel-file.js';
import { placeWords } from '../words/place-words.js';

const SAID: Record<AgainstFinding['kind'], string> = {
  'less-restrictive': 'less restrictive than the MMEL',
  unclear: 'to be weighed by a person',
};

export const melAgainst: Command = {
  name: 'mel against',
  summary: "where an operator's MEL is less restrictive than the master list, or cannot be weighed",
  files: [
    { name: 'MMEL', about: 'file of the master list' },
    { name: 'MEL', about: "file of the operator's own" },
  ],
  options: [],
  examples: ['mel against mmel.yaml mel.yaml'],
  async run({ files: [masterFile = '', melFile = ''] }) {
    const [mmel, mel] = [await melFrom(masterFile), await melFrom(melFile)];
    const findings = checkAgainst(mmel, mel);
    const value = { mmel: headOf(mmel), mel: headOf(mel), findings };
    return { value, words: words(value), exit: 0 };
  },
};

interface Against {
  mmel: ReturnType<typeof headOf>;
  mel: ReturnType<typeof headOf>;
  findings: AgainstFinding[];
}

function words({ mmel, mel, findings }: Against): string {
  const heads = `${mel.document}, revision ${mel.revision}, against ${mmel.document}, revision ${mmel.revision}`;
  if (findings.length === 0) return `${heads}: nowhere less restrictive.`;
  return [`${heads}:`, ...findings.map((one) => `  ${placeWords(one)}: ${SAID[one.kind]}: ${one.reason}`)].join('\n');
}
