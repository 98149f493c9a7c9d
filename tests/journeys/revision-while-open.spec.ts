/** What stays as it was signed while the MEL changes, and an interval that nobody can read. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { movementsOperator, nameAt, SECRET } from './movements-operator.js';

const NOW = '2026-01-26T10:00:00.000Z';
let server: RunningServer;
let technician: ApiClient;
let melEngineer: ApiClient;
let aircraft: string;

const load = (revision: string, category: 'B' | 'C', effectiveOn: string) => {
  const row = { id: '1', category, numberInstalled: 2, numberRequired: 1, remarks: 'One may be inoperative.' };
  const subEntries = [{ id: 'all', units: ['1', '2'], rows: [row] }];
  const entries = [{ number: '33-42-01', title: 'Landing light', chapter: '33', subEntries }];
  const head = { format: 'proviso-mel/1', document: 'Invented MEL', operator: 'nobody', aircraftType: 'T1' };
  const text = JSON.stringify({ ...head, revision, effectiveOn, entries });
  return melEngineer.post('/api/mel', { file: `mel-${revision}.json`, text });
};
async function writeUp(unit: string): Promise<string> {
  const { body } = await technician.post<Shapes['ActDone']>('/api/defects', {
    aircraft,
    origin: 'technician',
    description: `Landing light ${unit} is out.`,
    recordedAt: NOW,
    item: { entry: '33-42-01', units: [unit] },
  });
  return body.defect.id;
}
const view = async (defect: string) => (await technician.get<Shapes['DefectView']>(`/api/defects/${defect}`)).defect;

beforeAll(async () => {
  server = await runningServer({ now: () => NOW, secret: SECRET });
  const operator = await movementsOperator(server, { code: 'QR', marks: ['Q-RAA'] });
  aircraft = operator.aircraft['Q-RAA'] as string;
  technician = await server.signIn(nameAt('QR', 'technician'));
  melEngineer = await server.signIn(nameAt('QR', 'mel-engineer'));
  await load('1', 'C', '2026-01-01');
});

afterAll(() => server.stop());

it('an open deferral keeps the category it was signed under when a stricter revision comes (I-33, AC 120-125 9.2.2.4, SEEN-Q)', async () => {
  const defect = await writeUp('1');
  await technician.sign(defect, 'deferral', { act: 'defer', entry: '33-42-01', row: '1' }, { row: '1' });
  const before = await view(defect);
  expect(before.deadline).toMatchObject({ lastDay: '2026-02-05' });
  await load('2', 'B', '2026-01-26');
  const after = await view(defect);
  expect(after.deadline).toEqual(before.deadline);
  expect(after.basis).toBe('MEL 33-42-01 row 1 (category C)');
});

it.each(['ten days', '4 flights and 3 flight-days', '0 flights', '3 calendar-days or', '5 furlongs'])(
  'an interval "%s" that cannot be read is refused, and nothing is stored',
  async (interval) => {
    const defect = await writeUp('2');
    const document = { kind: 'approved-data', reference: 'EO 1', issuedBy: 'nobody', limit: 'none', interval };
    const query = { act: 'defer', document: 'approved data EO 1' };
    const before = await view(defect);
    const refusal = await technician.signRefused(defect, 'deferral', query, { document });
    expect(refusal).toMatchObject({ status: 422, code: 'interval-cannot-be-computed' });
    expect(JSON.stringify(refusal)).toContain('cannot be read');
    expect(await view(defect)).toEqual(before);
  },
);
