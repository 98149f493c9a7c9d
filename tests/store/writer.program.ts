/**
 * Writes to the record as fast as it can with several writers, and seals, until it is killed. It says each id on its
 * output only after the transaction that wrote it was acknowledged.
 * Usage: node writer <app url> <owner url> <operator> <person> <aircraft> <writers>
 */
import { lockAircraft, openStore, startSealer } from '#store';

const [appUrl = '', ownerUrl = '', operator = '', person = '', aircraftId = '', writers = '8'] =
  process.argv.slice(2);
const store = await openStore(appUrl, { connections: Number(writers) });
await startSealer(ownerUrl, { everyMs: 20 });

/** Every fourth act holds the aircraft, changes it and records that: the two must stand or fall together. */
async function writeOne(n: number): Promise<void> {
  const id = await store.withOperator(operator, person, async (tx) => {
    const held = n % 4 === 0 ? await lockAircraft(tx, aircraftId) : null;
    const version = held && (await tx.aircraft.touch(held));
    const times = { enteredAt: new Date().toISOString() };
    const entry = { who: person, authorisation: null, organisation: null, what: 'test.noted', aircraft: held, times };
    return (await tx.record.append({ ...entry, payload: { n, version } })).id;
  });
  process.stdout.write(`${id}\n`);
}

async function write(): Promise<never> {
  for (let n = 0; ; n += 1) await writeOne(n);
}

process.stdout.write('ready\n');
await Promise.all(Array.from({ length: Number(writers) }, write)).catch((error: unknown) => {
  process.stderr.write(`${String(error)}\n`);
  process.exit(1);
});
