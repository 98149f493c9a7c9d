import type { Owner } from '../acts.js';

/** "defect D1", "modification MOD 44", "AD 2026-0101", or that nobody knows. */
export function ownerInWords(owner: Owner | null): string {
  if (owner === null) return 'nobody';
  if (owner.kind === 'defect') return owner.defect;
  return `${owner.kind === 'directive' ? 'AD' : owner.kind} ${owner.reference}`;
}
