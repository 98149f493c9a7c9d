/** What every act after the write-up must be, whatever its kind. */
import type { Act } from './acts.js';
import { before } from './instant.js';
import type { DefectLife } from './defect-life.js';
import type { Privilege } from './people.js';
import { Refusal } from './refusal.js';
import { admitSignature } from './signing/admit-signature.js';
import { admitTimes } from './writing-up/admit-times.js';

interface Demands {
  privilege: Privilege | null;
  afterClosing?: boolean;
}

export function admitAny(demands: Demands, life: DefectLife, act: Act): void {
  const { defect, closed, acts, aircraft } = life;
  if (act.defect !== defect) throw new Refusal('act-of-another-defect', { act: act.id, other: act.defect, defect });
  if (acts.some(({ id }) => id === act.id)) throw new Refusal('act-entered-twice', { act: act.id, defect });
  if (closed !== null && demands.afterClosing !== true) {
    throw new Refusal('already-closed', { defect, closedAt: closed.at, how: closed.how });
  }
  admitTimes(act);
  const previousAt = acts.at(-1)?.enteredAt ?? life.enteredAt;
  if (before(act.enteredAt, previousAt)) {
    throw new Refusal('history-out-of-order', { act: act.id, enteredAt: act.enteredAt, previousAt });
  }
  const job = { defect, acts };
  admitSignature(act.by, demands.privilege, { aircraft, enteredAt: act.enteredAt, act: act.kind, job });
}
