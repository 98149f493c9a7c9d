/**
 * An independent inspection by one who did the work: under the European preset only as an unforeseen case that is recorded
 * and stated (145.A.48 AMC4, FROM MEMORY), under the American one never (14 CFR 121.371(c)).
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { anAirline } from './an-airline.js';

const NOW = '2026-01-19T12:00:00.000Z';
const BECAUSE = 'snow has closed the road to the station';
let server: RunningServer;

beforeAll(async () => {
  server = await runningServer({ now: () => NOW });
});

afterAll(() => server.stop());

/** Work on a defect that asks for an inspection, done by the one technician of an operator under a preset. */
async function worked(preset: string): Promise<{ technician: ApiClient; defect: string }> {
  const code = `Q${preset[0]?.toUpperCase()}X`;
  const airline = await anAirline(server, {
    code,
    base: 'UTC',
    aircraftType: 'Ambrel',
    settings: { preset },
    aircraft: ['Q-ABA'],
    people: [
      {
        signIn: `solo-${preset}`,
        name: 'Solo Brint',
        roles: ['technician'],
        privileges: ['write-up', 'sign-procedure', 'inspect', 'release'],
      },
    ],
  });
  const technician = await server.signIn(`solo-${preset}`);
  const written = await technician.post<Shapes['ActDone']>('/api/defects', {
    aircraft: airline.aircraft['Q-ABA'],
    origin: 'technician',
    description: 'Lamp out.',
    recordedAt: NOW,
  });
  const defect = written.body.defect.id;
  const work = { workDone: 'Lamp replaced.', reference: 'AMM 33', complete: true, testAsked: false };
  await technician.sign(defect, 'rectification', { act: 'rectify' }, { ...work, inspectionAsked: true });
  return { technician, defect };
}

describe('the one who did the work inspects it', () => {
  it('under the European preset, in an unforeseen case that the signature states and the history keeps', async () => {
    const { technician, defect } = await worked('easa');
    const findings = { findings: 'Lamp and lens.' };
    const plain = await technician.signRefused(defect, 'inspection', { act: 'inspect' }, findings);
    expect(plain.code).toBe('same-person-inspecting');
    const own = { ...findings, unforeseen: BECAUSE };
    const unsaid = await technician.signRefused(defect, 'inspection', { act: 'inspect' }, own);
    expect(unsaid.code).toBe('statement-not-shown');
    const { signed } = await technician.sign(defect, 'inspection', { act: 'inspect', unforeseen: BECAUSE }, own);
    expect(signed?.statement).toContain(`inspected it again myself, since nobody else could: ${BECAUSE}.`);
    const { history } = await technician.get<Shapes['DefectView']>(`/api/defects/${defect}`);
    expect(history.at(-1)?.words).toContain(BECAUSE);
  });

  it('under the American preset never, whatever the reason', async () => {
    const { technician, defect } = await worked('faa');
    const own = { findings: 'Lamp and lens.', unforeseen: BECAUSE };
    const asked = { act: 'inspect', unforeseen: BECAUSE };
    expect((await technician.signRefused(defect, 'inspection', asked, own)).code).toBe('own-inspection-never');
  });
});
