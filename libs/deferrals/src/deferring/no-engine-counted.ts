import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';

/**
 * What one engine has used says nothing of another, and a limit that was signed is not counted anew. M.A.403(c).
 * Throws Refusal `counted-by-engine` where a limit counts an engine.
 */
export function noEngineCounted({ defect, limits }: Pick<DefectLife, 'defect' | 'limits'>, unit: string): void {
  const engine = limits
    .map(({ clock }) => (clock?.kind === 'counted' ? clock.engine : undefined))
    .find((one) => one !== undefined);
  if (engine !== undefined) throw new Refusal('counted-by-engine', { defect, engine, unit });
}
