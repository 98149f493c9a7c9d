/**
 * A proviso made ready to be judged again and again. The rules engine's is the one that counts for every answer that is
 * recorded or signed; another evaluator of the same tree may stand beside it for searches.
 */
import type { ExplainedNode } from '../verdict.js';
import type { FactLookup } from './marker.js';

export interface CompiledProviso {
  /** Keys of the facts about entries that it reads, each once: the facts that differ from choice to choice. */
  entryKeys: readonly string[];
  judge(lookup: FactLookup): ExplainedNode | Promise<ExplainedNode>;
}
