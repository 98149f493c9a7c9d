import { newId, type LegRow, type Tx } from '#store';
import { someInstant } from './an-operator.js';

const hash = 'e'.repeat(64);

/** A message in a delivery of its own. @returns its key */
export async function aMessage(tx: Tx, entryId: string, text = 'MVT\nZZ1/01.QNA.QQA\nAD0800'): Promise<string> {
  const at = { receivedAt: someInstant, enteredAt: someInstant };
  const deliveryId = await tx.movements.addDelivery({ text, sha256: hash, cameBy: 'text', entryId, ...at });
  const [message] = await tx.movements.addMessages([
    { deliveryId, line: 1, text, sha256: hash, ...at, flight: 'ZZ1', scheduledOn: '2026-03-01', state: 'read' },
  ]);
  if (!message) throw new Error('no message');
  return message.id;
}

/** An hour in the air, with ten minutes of taxi, from `someInstant` on. */
export function aLeg(changes: Partial<LegRow> & Pick<LegRow, 'aircraftId' | 'entryId'>): Omit<LegRow, 'operatorId'> {
  return {
    id: newId(),
    version: 1,
    flight: 'ZZ1',
    scheduledOn: '2026-03-01',
    sequence: 1,
    fromStation: 'QQA',
    toStation: 'QQB',
    ending: 'arrived',
    offBlockAt: someInstant,
    airborneAt: '2026-03-01T08:05:00.000Z',
    landedAt: '2026-03-01T09:05:00.000Z',
    onBlockAt: '2026-03-01T09:10:00.000Z',
    blockMinutes: 70,
    flightMinutes: 60,
    cycles: 1,
    landings: 1,
    missing: [],
    delays: [],
    divertedFrom: null,
    divertedReason: null,
    flightId: null,
    source: 'messages',
    messageId: null,
    personId: null,
    reason: null,
    writtenAt: someInstant,
    ...changes,
  };
}
