/** The state of every table that can be built from the record is built from it, and says the same. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.js';
import type { Compared } from '../../apps/server/src/index.js';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { withClient } from '../support/with-client.js';

const now = () => '2026-01-15T12:12:00.000Z';
let server: RunningServer;
let technician: ApiClient;
let defect: string;

beforeAll(async () => {
  server = await runningServer({ now, demo: true });
  technician = await server.signIn('odrin');
  const fleet = await technician.get<Shapes['Fleet']>('/api/fleet');
  const aircraft = fleet.aircraft[0]?.id ?? '';
  const told = { aircraft, origin: 'technician', description: 'Reading light flickers.', recordedAt: now() };
  const { body } = await technician.post<Shapes['ActDone']>('/api/defects', told);
  defect = body.defect.id;
  const left = `/api/aircraft/${aircraft}/left`;
  const thing = { kind: 'breaker', where: 'panel P9, B4', tag: 'K-0900', undo: 'Remove the collar, reset it.' };
  const { etag } = await technician.send('GET', left);
  await technician.post(`${left}/found`, { items: [thing], remarks: 'seen' }, { ifMatch: etag ?? '' });
  while ((await waiting()) > 0) await new Promise((go) => setTimeout(go, 50));
});

afterAll(() => server.stop());

async function waiting(): Promise<number> {
  const { stdout } = await run(['record', 'verify', '--database', server.ownerUrl, '--json']);
  const { operators } = JSON.parse(stdout) as { operators: { waiting: number }[] };
  return operators.reduce((sum, one) => sum + one.waiting, 0);
}

async function compared(): Promise<{ code: number; stdout: string; operators: Compared[] }> {
  const line = ['record', 'compare', '--database', server.ownerUrl];
  const asked = await run([...line, '--json']);
  expect(asked.stderr).toBe('');
  const { stdout, code } = await run(line);
  return { code, stdout, ...(JSON.parse(asked.stdout) as { operators: Compared[] }) };
}

/** Behind every guard, and put back afterwards. */
async function foundAfter(table: string, sql: string, values: unknown[]): ReturnType<typeof compared> {
  return withClient(server.database.adminUrl, async (client) => {
    await client.query("set session_replication_role = 'replica'");
    await client.query(`create temp table kept as select * from ${table}`);
    try {
      expect((await client.query(sql, values)).rowCount).toBe(1);
      return await compared();
    } finally {
      await client.query(`delete from ${table}`);
      await client.query(`insert into ${table} select * from kept`);
      await client.query('drop table kept');
    }
  });
}

it('says the same for every operator of the demo and what was done since, and counts what it held', async () => {
  const { code, stdout, operators } = await compared();
  expect({ code, differences: operators.flatMap(({ differences }) => differences) }).toEqual({
    code: 0,
    differences: [],
  });
  for (const one of operators) expect(stdout).toContain(`${one.operator}: ${one.rows} row`);
  expect(operators.some(({ rows, entries }) => rows > 20 && entries > 20)).toBe(true);
});

describe('what was altered in a table by SQL is named with what both say', () => {
  it.each([
    ['the state of a defect', 'defect', `update defect set state = 'closed' where id = $1`, 'state', 'closed'],
    ['its description', 'defect', `update defect set description = 'Dust.' where id = $1`, 'description', 'Dust.'],
    [
      'a word within a stored act',
      'defect_act',
      `update defect_act set payload = jsonb_set(payload, '{description}', '"Dust."') where defect_id = $1`,
      'payload.description',
      'Dust.',
    ],
    [
      'the place of a thing left on the aircraft',
      'left_item',
      `update left_item set place = 'P1' where tag = 'K-0900' and $1 <> ''`,
      'place',
      'P1',
    ],
  ])('%s', async (_, table, sql, column, stored) => {
    const { code, stdout, operators } = await foundAfter(table, sql, [defect]);
    const differences = operators.flatMap((one) => one.differences);
    expect({ code, differences }).toMatchObject({ code: 1, differences: [{ table, column, stored }] });
    expect(stdout).toContain(`  ${table} ${differences[0]?.id} ${column}: the record says "`);
  });

  it('the words of a signature', async () => {
    const sql = `update signature set statement = 'Nothing.' where id = (select id from signature order by id limit 1)`;
    const { code, operators } = await foundAfter('signature', sql, []);
    const found = { table: 'signature', column: 'statement', stored: 'Nothing.' };
    expect({ code, differences: operators.flatMap((one) => one.differences) }).toMatchObject({
      code: 1,
      differences: [found],
    });
  });

  it('an act that was taken out', async () => {
    const { code, operators, stdout } = await foundAfter(
      'defect_act',
      'delete from defect_act where defect_id = $1',
      [defect],
    );
    expect({ code, differences: operators.flatMap((one) => one.differences) }).toMatchObject({
      code: 1,
      differences: [{ table: 'defect_act', column: null, record: 'is there', stored: null }],
    });
    expect(stdout).toMatch(/defect_act \S+: the record says "is there", the table says nothing/);
  });
});
