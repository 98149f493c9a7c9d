import type { LeftItemRow } from '#store';
import type { KeepsLines } from '../../register/keep-register.js';

/** The register of one aircraft, kept in memory by the same rules that keep it in the database. */
export class LinesInMemory implements KeepsLines {
  readonly lines = new Map<string, LeftItemRow>();
  readonly register: KeepsLines['register'];

  constructor(operatorId: string) {
    const { lines } = this;
    this.register = {
      get: (id) => Promise.resolve(lines.get(id) ?? null),
      add: ({ id = '', ...item }) => {
        lines.set(id, { ...NOTHING, ...item, id, operatorId, version: 1 });
        return Promise.resolve(id);
      },
      change: (id, seen, changes) => {
        const line = lines.get(id);
        if (line) lines.set(id, { ...line, ...changes, version: seen + 1 });
        return Promise.resolve();
      },
      ofAircraft: (aircraftId, { removed = false } = {}) =>
        Promise.resolve(
          [...lines.values()].filter((one) => one.aircraftId === aircraftId && (removed || one.removedAt === null)),
        ),
    };
  }
}

const NOTHING = {
  defectId: null,
  tag: null,
  ownedBy: null,
  ownerKind: null,
  ownerUntil: null,
  under: null,
  removedBy: null,
  removedAt: null,
  verifiedBy: null,
  verifiedAt: null,
};
