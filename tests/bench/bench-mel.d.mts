import type { MelContent, Proviso } from '#mel';

type BenchRow = MelContent['entries'][number]['subEntries'][number]['rows'][number] & { provisos: Proviso[] };
export const content: { entries: { number: string; subEntries: { rows: BenchRow[] }[] }[] };
