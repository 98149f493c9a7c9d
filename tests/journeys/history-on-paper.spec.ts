/**
 * A history on paper, read back. Names are written as people write them, in scripts that a western font does not have; and
 * somebody has put a formula and a tag into a description.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { readPdf, type ReadPdf } from '../support/read-pdf.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { type Airline, anAirline } from './an-airline.js';

const now = '2026-07-14T10:05:00.000Z';
const NAMES = { technician: 'Željka Žurić-Ščasny', inspector: 'Мирон Ґедзь', quality: 'Ελένη Καρρά' };
const HOSTILE = '=HYPERLINK("http://x","y") <b>Reading light</b> 閃爍';
let server: RunningServer;
let airline: Airline;
let technician: ApiClient;
let quality: ApiClient;
let defect: string;

beforeAll(async () => {
  server = await runningServer({ now: () => now });
  const mayAll = { privileges: ['write-up', 'defer', 'sign-procedure', 'release', 'inspect'] as const };
  airline = await anAirline(server, {
    code: 'QHP',
    base: 'Europe/Paris',
    aircraftType: 'Ambrel',
    people: [
      { signIn: 'zel', name: NAMES.technician, roles: ['technician'], privileges: [...mayAll.privileges] },
      { signIn: 'mir', name: NAMES.inspector, roles: ['technician'], privileges: [...mayAll.privileges] },
      { signIn: 'ele', name: NAMES.quality, roles: ['quality'] },
    ],
    aircraft: ['Q-HPA'],
  });
  technician = await server.signIn('zel');
  quality = await server.signIn('ele');
  const { body } = await technician.post<Shapes['ActDone']>('/api/defects', {
    aircraft: airline.aircraft['Q-HPA'],
    origin: 'technician',
    description: HOSTILE,
    sheet: '118',
    recordedAt: now,
  });
  defect = body.defect.id;
  const work = { workDone: 'Lamp changed', reference: 'AMM 33-21 rev 4', complete: true };
  const asked = { testAsked: false, inspectionAsked: true };
  await technician.sign(defect, 'rectification', { act: 'rectify' }, { ...work, ...asked });
  const inspector = await server.signIn('mir');
  await inspector.sign(defect, 'inspection', { act: 'inspect' }, { findings: 'Correct part, secured' });
});

afterAll(() => server.stop());

async function printed(path: string): Promise<ReadPdf> {
  const response = await quality.page(path);
  expect(response.status).toBe(200);
  expect(response.headers.get('content-type')).toBe('application/pdf');
  return readPdf(new Uint8Array(await response.arrayBuffer()));
}

describe('the history of a defect on paper', () => {
  let paper: ReadPdf;
  let text: string;

  it('shows of every signature the name, the licence, the role and the time by the clock of the base', async () => {
    paper = await printed(`/api/defects/${defect}/history.pdf`);
    text = paper.pages.join(' ');
    const { history } = await quality.get<Shapes['DefectView']>(`/api/defects/${defect}`);
    const signed = history.filter(({ statement }) => statement !== null);
    expect(signed.map(({ by }) => by)).toEqual([NAMES.technician, NAMES.inspector]);
    for (const line of signed) {
      expect(text).toContain(`Signed by ${line.by}, role ${line.role}, licence ${line.licence}, authorisation`);
      expect(text).toContain(line.statement);
    }
    expect(text).toContain('signed 2026-07-14 12:05:00 +02:00 (Europe/Paris)');
    for (const { words } of history.slice(1)) expect(text).toContain(words);
  });

  it('numbers its pages, and says on each what it is, what it does not replace and what nobody has approved', () => {
    for (const [index, page] of paper.pages.entries()) {
      expect(page).toContain(`Page ${index + 1} of ${paper.pages.length}`);
      expect(page).toContain('never replaces, the approved MEL');
      expect(page).toContain('designed to the published guidance on electronic records; nobody has approved them');
      expect(page).toContain('Q-HPA/1, made 2026-07-14 12:05:00 +02:00 (Europe/Paris)');
    }
    expect(paper.title).toBe('History of Q-HPA/1');
    expect(text).toContain('INVENTED for demonstration, never for flight.');
    expect(text).toContain('Legal original: the paper log.');
  });

  it('shows a hostile description as text, and says which characters it has no form for', () => {
    expect(text).toContain('=HYPERLINK("http://x","y") <b>Reading light</b> □□');
    expect(text).toMatch(/\d+ characters have no form in the fonts of this print and stand as □/);
  });

  it('of a whole aircraft has every defect, with the same words', async () => {
    const whole = (await printed(`/api/aircraft/${airline.aircraft['Q-HPA']}/history.pdf`)).pages.join(' ');
    expect(whole).toContain('Q-HPA/1');
    expect(whole).toContain(`Signed by ${NAMES.inspector}, role technician, licence QX.mir`);
  });

  it('is not printed for a technician', async () => {
    expect(await technician.refused('GET', `/api/defects/${defect}/history.pdf`)).toMatchObject({
      code: 'role-missing',
    });
  });
});

it('the list for a spreadsheet carries nothing out', async () => {
  const response = await quality.page('/api/defects.csv');
  expect(response.headers.get('content-type')).toBe('text/csv; charset=utf-8');
  expect(response.headers.get('content-disposition')).toBe('attachment; filename="open-items.csv"');
  const [, line = ''] = (await response.text()).split('\r\n');
  expect(line.startsWith('"Q-HPA/1","Q-HPA"')).toBe(true);
  expect(line).toContain(`"'=HYPERLINK(""http://x"",""y"") <b>Reading light</b> 閃爍"`);
});
