/**
 * Movement messages stored by the server over HTTP, up to a thousand in a delivery, in the database that it starts itself;
 * then one correction of a leg flown days ago, of an aircraft with open deferrals that count what it flew.
 */
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { newId, openStore, startEmbedded } from '#store';
import { median, rate } from './measure.mjs';
import { post, signIn } from './over-http.mjs';
import { startServer } from './server-process.mjs';
import { markOf, movementsByDay } from './year-of-movements.mjs';

const DAY = 86_400_000;
const MOST = 1000;
const CORRECTIONS = 15;

export async function storing({ aircraft, days }) {
  const folder = await mkdtemp(join(tmpdir(), 'proviso-bench-'));
  await (await startServer(folder)).stop();
  const server = await startServer(folder, { REQUESTS_PER_MINUTE: '1000000' });
  const database = await startEmbedded({ dataFolder: join(folder, '.proviso') });
  const store = await openStore(database.url, { connections: 2 });
  try {
    const client = await signIn(server.url, 'jorik');
    const technician = await signIn(server.url);
    await store.withOperator(client.operator, null, async (tx) => {
      for (let plane = 0; plane < aircraft; plane += 1) {
        const row = { registration: markOf(plane), type: 'Kellwing', serial: 9000, configuration: ['regional'] };
        await tx.aircraft.add({ id: newId(), ...row });
      }
    });
    const texts = deliveries({ aircraft, days });
    const used = server.cpuSeconds();
    const started = performance.now();
    let messages = 0;
    for (const text of texts) messages += (await send(client, text)).messages.length;
    const seconds = (performance.now() - started) / 1000;
    const busy = server.cpuSeconds() - used;
    return [
      `${rate(messages)} of them stored over HTTP in ${texts.length} deliveries: ${rate(messages / seconds)} messages/s (${seconds.toFixed(1)} s; aim 500), ${rate(messages / busy)} for each second of processor time of the server`,
      `one correction of an old leg, with every standing and answer it touches: ${await corrected(server, store, client, technician)}`,
      `peak memory of the server ${Math.round(server.peakMiB())} MiB`,
    ];
  } finally {
    await store.close();
    await server.stop();
    await database.stop();
    await rm(folder, { recursive: true, force: true });
  }
}

/** Received in the last days: the server takes nothing from the future. */
function deliveries({ aircraft, days }) {
  const truth = {};
  const shift = Math.floor((Date.now() - 2 * DAY) / DAY) * DAY - days * DAY;
  const all = [...movementsByDay({ aircraft, days, truth, begin: shift })].flat();
  const texts = [];
  for (let from = 0; from < all.length; from += MOST) {
    const lines = all.slice(from, from + MOST).map(({ text, receivedAt }) => `RECEIVED ${receivedAt}\n${text}`);
    texts.push(lines.join('\n\n'));
  }
  return texts;
}

async function send({ url, cookie }, text) {
  const headers = { cookie, 'content-type': 'text/plain', 'idempotency-key': randomUUID() };
  const answer = await fetch(`${url}/api/movements`, { method: 'POST', headers, body: text });
  const body = await answer.json();
  if (!answer.ok) throw new Error(`${answer.status} ${JSON.stringify(body)}`);
  return body;
}

/** @returns median and longest time, each over HTTP from the message to the answer that says what changed */
async function corrected(server, store, client, technician) {
  const { legs, aircraft } = await oldLegs(store, client);
  await deferred(store, technician, aircraft);
  const times = [];
  const used = server.cpuSeconds();
  let touched = 0;
  for (let turn = 0; turn < CORRECTIONS; turn += 1) {
    const { flight, scheduledOn, toStation, landedAt, onBlockAt } = legs[turn % legs.length];
    const clock = (at) => at.slice(8, 10) + at.slice(11, 16).replace(':', '');
    const landed = new Date(Date.parse(landedAt) - (1 + (turn % 2)) * 60_000).toISOString();
    const place = `${flight}/${scheduledOn.slice(8)}.${markOf(0)}.${toStation}`;
    const text = `RECEIVED ${new Date(Date.parse(onBlockAt) + (turn + 120) * 60_000).toISOString()}\nCOR MVT\n${place}\nAA${clock(landed)}/${clock(onBlockAt)}`;
    const started = performance.now();
    const { items } = await send(client, text);
    times.push(performance.now() - started);
    touched += items.length;
  }
  const busy = ((server.cpuSeconds() - used) * 1000) / CORRECTIONS;
  return `${Math.round(median(times))} ms, ${Math.round(busy)} ms of processor time of the server each, longest ${Math.round(Math.max(...times))} ms (${CORRECTIONS} of them, which changed ${touched} standings; aim under 100)`;
}

function oldLegs(store, { operator }) {
  return store.withOperator(operator, null, async (tx) => {
    const [{ id: aircraft }] = await tx.aircraft.withMarks([markOf(0)]);
    const legs = await tx.legs.flown(aircraft, new Date(0).toISOString());
    return { aircraft, legs: legs.filter(({ landedAt, onBlockAt }) => landedAt && onBlockAt).slice(0, 3) };
  });
}

/** Two open deferrals that count from before those legs, and the next five flights planned. */
async function deferred(store, client, aircraft) {
  const start = { at: new Date(Date.now() - 30 * DAY).toISOString(), document: 'invented for the bench' };
  for (const [entry, interval] of [
    ['79-32-11', '900 flight-hours'],
    ['73-33-11', '900 flights'],
  ]) {
    const { body, etag } = await post(client, '/api/defects', {
      aircraft,
      origin: 'technician',
      description: 'An indication is missing.',
      recordedAt: new Date().toISOString(),
      item: { entry, units: ['1'] },
    });
    const { id, number, registration } = body.defect;
    const basis = {
      kind: 'approved-data',
      reference: `QD ${entry}`,
      issuedBy: 'nobody',
      limit: 'invented',
      interval,
    };
    const statement = `I defer defect ${number} on ${registration} on the basis of approved data QD ${entry}. I have read its conditions, and its procedures and placard belong to this deferral.`;
    const sign = { secret: client.secret, statement };
    await post(client, `/api/defects/${id}/deferral`, { document: basis, start, sign }, etag);
  }
  await store.withOperator(client.operator, null, async (tx) => {
    for (let turn = 1; turn <= 5; turn += 1) {
      const at = (hours) => new Date(Date.now() + hours * 3_600_000).toISOString();
      const [offBlockAt, onBlockAt] = [at(turn * 5), at(turn * 5 + 2)];
      const place = { fromStation: 'QVR', toStation: 'QHT', facts: { 'flight.etopsMinutes': 0 } };
      await tx.flights.add({ aircraftId: aircraft, number: `QB${turn}`, offBlockAt, onBlockAt, ...place });
    }
  });
}
