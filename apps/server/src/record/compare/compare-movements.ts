/** Legs, and what came in of movement messages, held against the entries that told of them. */
import type { Recorded, RecordedEntry, Tx } from '#store';
import { contentIn } from '../../movements/leg-content.js';
import type { Compared } from './compared.js';
import { differencesOfRow } from './difference.js';

const PAGE = 500;
const FIRST = '00000000-0000-0000-0000-000000000000';

interface ToldMessage {
  sha256: string;
  flight: string | null;
  scheduledOn: string | null;
  registration: string | null;
}

/** Run it at one moment, as `compareRows`. */
export async function compareMovements(tx: Tx, compared: Compared): Promise<void> {
  await compareLegs(tx, compared);
  await compareDeliveries(tx, compared);
  for (const { table, id, column } of await tx.rowsForRecord.otherwiseHashed()) {
    const why = { record: 'the text of the hash beside it', stored: 'another text' };
    compared.differences.push({ table, id, column, ...why });
  }
  for (const table of ['leg', 'movement_delivery'] as const) {
    for (const id of await tx.rowsForRecord.withoutRow(table)) {
      compared.rows += 1;
      compared.differences.push({ table, id: `of entry ${id}`, column: null, record: 'is there', stored: null });
    }
  }
}

async function compareLegs(tx: Tx, compared: Compared): Promise<void> {
  for (let after = FIRST; ;) {
    const legs = await tx.rowsForRecord.legsAfter(after, PAGE);
    const entries = await entriesOf(tx, legs);
    for (const leg of legs) {
      const entry = entries.get(leg.entryId);
      const { leg: id, reason, ...content } = entry?.payload ?? {};
      const told = entry?.what.startsWith('leg.') ? { ...content, id, reason: reason ?? null } : null;
      const { id: key, version, reason: why } = leg;
      compared.rows += 1;
      const stored = { ...contentIn(leg), id: key, version, reason: why };
      compared.differences.push(...differencesOfRow('leg', `${key} version ${version}`, told, stored));
    }
    if (legs.length < PAGE) return;
    after = legs.at(-1)?.entryId ?? after;
  }
}

async function compareDeliveries(tx: Tx, compared: Compared): Promise<void> {
  for (let after = FIRST; ;) {
    const deliveries = await tx.rowsForRecord.deliveriesAfter(after, PAGE);
    const entries = await entriesOf(tx, deliveries);
    const messages = await tx.rowsForRecord.messagesOf(deliveries.map(({ id }) => id));
    for (const delivery of deliveries) {
      const { times, payload } = entries.get(delivery.entryId) ?? {};
      const { sha256, cameBy, messages: listed } = payload ?? {};
      const told = payload === undefined ? null : { sha256, cameBy, enteredAt: times?.enteredAt };
      compared.rows += 1;
      compared.differences.push(...differencesOfRow('movement_delivery', delivery.id, told, delivery));
      const own = messages.filter(({ deliveryId }) => deliveryId === delivery.id);
      const { length } = compared.differences;
      compared.differences.push(...differencesOfMessages((listed ?? []) as ToldMessage[], own, delivery.id));
      compared.rows += Math.max(own.length, compared.differences.length - length);
    }
    if (deliveries.length < PAGE) return;
    after = deliveries.at(-1)?.entryId ?? after;
  }
}

function differencesOfMessages(told: readonly ToldMessage[], own: readonly ToldMessage[], delivery: string) {
  const bySha = new Map(told.map((one) => [one.sha256, one]));
  const kept = new Set(own.map(({ sha256 }) => sha256));
  const missing = told.filter(({ sha256 }) => !kept.has(sha256));
  return [
    ...own.flatMap((row) => {
      const { sha256 } = row;
      const one = bySha.get(sha256);
      const { flight = null, scheduledOn = null, registration = null } = one ?? {};
      const says = one && { sha256, flight, scheduledOn, registration };
      return differencesOfRow('movement_message', `${sha256} of ${delivery}`, says ?? null, row);
    }),
    ...missing.flatMap((one) => differencesOfRow('movement_message', `${one.sha256} of ${delivery}`, one, null)),
  ];
}

async function entriesOf(tx: Tx, rows: readonly { entryId: string }[]): Promise<Map<string, RecordedEntry>> {
  const bytes = await tx.record.bytesOf([...new Set(rows.map(({ entryId }) => entryId))]);
  return new Map(
    [...bytes].map(([id, canonical]) => [
      id,
      JSON.parse(Buffer.from(canonical).toString('utf8')) as Recorded['entry'],
    ]),
  );
}
