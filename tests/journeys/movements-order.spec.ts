/**
 * In whatever order messages arrive, however often each, and in however many deliveries: what is kept in the end equals
 * what reading all of them at once gives. The whole reading is the second opinion; it knows no database.
 */
import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type FlownLeg, readMovements } from '#movements';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { movementsOperator, type MovementsOperator, nameAt, SECRET } from './movements-operator.js';

const RUNS = 4;
const marks = Array.from({ length: RUNS }, (_, n) => `Q-O${String.fromCharCode(65 + n)}`);
const now = '2026-05-17T00:00:00.000Z';

let server: RunningServer;
let operator: MovementsOperator;
let client: ApiClient;

beforeAll(async () => {
  server = await runningServer({ now: () => now, secret: SECRET });
  operator = await movementsOperator(server, { code: 'QO', marks });
  client = await server.signIn(nameAt('QO', 'engineer'));
});

afterAll(() => server.stop());

interface Sent {
  text: string;
  receivedAt: string;
}

/** Two days of one aircraft: a return to the ramp, an air return, a diversion, a lost arrival, corrections, garbage. */
function messages(mark: string, flight: number): Sent[] {
  const reg = mark.replace('-', '');
  const about = (
    kind: string,
    number: number,
    day: string,
    station: string,
    body: string,
    receivedAt: string,
  ): Sent => ({
    text: `${kind}\nQO${flight + number}/${day}.${reg}.${station}\n${body}`,
    receivedAt,
  });
  return [
    about('MVT', 1, '14', 'QXA', 'AD0700 RR0712', '2026-05-14T07:13:00Z'),
    about('MVT', 1, '14', 'QXA', 'AD0730/0740 EA0900 QXB', '2026-05-14T07:41:00Z'),
    about('MVT', 1, '14', 'QXA', 'FR0755/0803', '2026-05-14T08:04:00Z'),
    about('MVT', 1, '14', 'QXA', 'AD0900/0912 EA1030 QXB', '2026-05-14T09:13:00Z'),
    about('DIV', 1, '14', 'QXB', 'EA1025 QXC\nDR71', '2026-05-14T09:50:00Z'),
    about('MVT', 1, '14', 'QXC', 'AA1022/1030', '2026-05-14T10:31:00Z'),
    about('MVT', 2, '14', 'QXC', 'AD1130/1140 EA1215 QXB', '2026-05-14T11:41:00Z'),
    about('MVT', 3, '14', 'QXB', 'AD1500/1510 EA1600 QXA\nDL41/0030', '2026-05-14T15:11:00Z'),
    about('MVT', 3, '14', 'QXA', 'AA1602/1610', '2026-05-14T16:11:00Z'),
    about('COR MVT', 3, '14', 'QXA', 'AA1605/1612', '2026-05-14T17:00:00Z'),
    about('MVT', 4, '15', 'QXA', 'AD2350/0005 EA0100 QXB', '2026-05-16T00:06:00Z'),
    about('COR MVT', 1, '14', 'QXA', 'AD0730 RR0803', '2026-05-15T09:00:00Z'),
    about('MVT', 5, '15', 'QXB', 'AD0700/0675', '2026-05-15T07:20:00Z'),
  ];
}

/** What both tell of a leg, the ending as a text: only what is kept can be withdrawn. */
type Told = Pick<
  FlownLeg,
  'flight' | 'scheduledOn' | 'sequence' | 'from' | 'to' | 'blockMinutes' | 'flightMinutes' | 'cycles' | 'landings'
> & { ending: string };

function shape(leg: Told): Told {
  const { flight, scheduledOn, sequence, from, to, ending, blockMinutes, flightMinutes, cycles, landings } = leg;
  return { flight, scheduledOn, sequence, from, to, ending, blockMinutes, flightMinutes, cycles, landings };
}

it('what is kept equals the whole reading', async () => {
  let run = 0;
  const deliveries = fc
    .tuple(
      fc.shuffledSubarray(
        messages('Q-OA', 0).map((_, n) => n),
        { minLength: 13 },
      ),
      fc.array(fc.nat(12), { maxLength: 4 }),
    )
    .chain(([order, again]) =>
      fc.tuple(
        fc.constant([...order, ...again]),
        fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 17, maxLength: 17 }),
      ),
    );
  await fc.assert(
    fc.asyncProperty(deliveries, async ([order, sizes]) => {
      const mark = marks[run % RUNS] as string;
      const all = messages(mark, (run += 1) * 10);
      const left = order.map((n) => all[n] as Sent);
      for (const size of sizes) {
        const part = left.splice(0, size);
        const text = part.map((one) => `RECEIVED ${one.receivedAt}\n${one.text}`).join('\n\n');
        if (part.length > 0) await client.post('/api/movements', { text });
      }
      const whole = readMovements(all);
      expect([whole.legs.length, whole.tray.length]).toEqual([6, 2]);
      const path = `/api/aircraft/${operator.aircraft[mark]}/legs?from=2026-05-14T00:00:00Z`;
      const kept = await client.get<Shapes['AircraftLegs']>(path);
      const { byRegistration: _, ...counters } = whole.counters;
      expect(kept.legs.map(shape)).toEqual(whole.legs.map(shape));
      expect(kept.counters).toEqual(counters);
      const { entries } = await client.get<Shapes['MovementTray']>('/api/movements/tray');
      const open = entries.filter(({ aircraft }) => aircraft === operator.aircraft[mark]);
      const said = (of: { reason: string; sentence: string }[]) =>
        of.map((one) => `${one.reason}: ${one.sentence}`).sort();
      expect(said(open)).toEqual(said(whole.tray));
    }),
    { numRuns: RUNS, endOnFailure: true },
  );
});
