/**
 * A mistyped detail of what follows a write-up is corrected by a signed act of its own (published requirements E-09, E-11):
 * the unit of a deferral, a part that was fitted, a limit. What decides something waits for a second person (145.A.48 for
 * what is on the aircraft; for the rest common practice, no source), and what would change an answer is refused with what
 * to do instead.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.js';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { readPdf } from '../support/read-pdf.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

let clock = '2026-01-15T12:12:00.000Z';
let server: RunningServer;
let tech: ApiClient;
let inspector: ApiClient;
let item: string;

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  tech = await server.signIn('odrin');
  inspector = await server.signIn('wick');
  const { aircraft } = await tech.get<Shapes['Fleet']>('/api/fleet');
  const on = aircraft.find(({ registration }) => registration === 'Q-KEA') ?? aircraft[0];
  const written = await tech.post<Shapes['ActDone']>('/api/defects', {
    aircraft: on?.id,
    origin: 'technician',
    description: 'Logo light out.',
    recordedAt: clock,
    item: { entry: '33-42-11', units: ['L'] },
  });
  item = written.body.defect.id;
  const body = { item: { entry: '33-42-11', units: ['L'] }, row: '1' };
  await tech.sign(item, 'deferral', { act: 'defer', entry: '33-42-11', row: '1' }, body);
});

afterAll(() => server.stop());

const view = (id = item): Promise<Shapes['DefectView']> => tech.get(`/api/defects/${id}`);
const lineOf = async (act: string): Promise<Shapes['HistoryLine']> => {
  const found = (await view()).history.findLast((line) => line.act === act);
  if (!found) throw new Error(`Nothing of kind ${act} in the history.`);
  return found;
};

interface Said {
  of: string;
  field: string;
  now: string;
  part?: number;
}

const queryOf = ({ part, ...said }: Said) => ({
  act: 'correct',
  ...said,
  ...(part === undefined ? {} : { part: String(part) }),
});
const correct = (said: Said, by = tech) =>
  by.sign(item, 'correction', queryOf(said), { ...said, reason: 'misread from the sheet' });

describe('the unit of a deferral', () => {
  it('waits for a second look, and the aircraft does not leave meanwhile', async () => {
    const { id } = await lineOf('deferred');
    const before = (await view()).defect;
    const done = await correct({ of: id, field: 'unit', now: 'R' });
    expect(done.signed?.statement).toMatch(/the unit reads "R" in place of "L"\. No limit moves\. Judged so, /);
    expect(done.signed?.statement).toContain('until a second person has looked');
    const { defect, waiting } = await view();
    expect([defect.units, defect.waits]).toEqual([['L'], ['the unit']]);
    expect(waiting[0]).toMatchObject({ field: 'the unit', was: 'L', now: 'R', by: done.signed?.by });
    const answer = await tech.get<Shapes['Verdict']>(`/api/aircraft/${before.aircraft}/answer`);
    expect(JSON.stringify(answer.gates)).toContain('a correction waits for a second look: the unit');
    expect(answer.verdict).not.toBe('may-fly');
  });

  it('is not looked at by the one who asked, nor through the register', async () => {
    const asked = (await view()).waiting[0]?.id ?? '';
    const own = await tech.signRefused(item, 'second-look', { act: 'second-look', asked }, { asked });
    expect(own).toMatchObject({ code: 'same-person-looking' });
    const { aircraft } = (await view()).defect;
    const { etag } = await inspector.send('GET', `/api/aircraft/${aircraft}/left`);
    const statement = `/api/aircraft/${aircraft}/left/statement?act=second-look&asked=${asked}`;
    expect(await inspector.refused('GET', statement)).toMatchObject({ code: 'correction-not-asked' });
    const body = { asked, sign: { secret: inspector.secret, statement: 'I looked.' } };
    const sending = { body, ifMatch: etag ?? '' };
    const problem = await inspector.refused('POST', `/api/aircraft/${aircraft}/left/second-looks`, sending);
    expect(problem).toMatchObject({ code: 'correction-not-asked' });
  });

  it('reads otherwise once another person looked; the clock stays, and the first word stands struck', async () => {
    const before = (await view()).defect;
    const asked = (await view()).waiting[0]?.id ?? '';
    clock = '2026-01-15T12:20:00.000Z';
    const done = await inspector.sign(item, 'second-look', { act: 'second-look', asked }, { asked });
    expect(done.defect.units).toEqual(['R']);
    const { defect, waiting } = await view();
    expect(waiting).toEqual([]);
    expect([defect.recordedAt, defect.deadline?.endsAt]).toEqual([before.recordedAt, before.deadline?.endsAt]);
    const deferred = await lineOf('deferred');
    expect(deferred.words).toContain('unit L');
    expect(deferred.corrections).toMatchObject([{ field: 'the unit', was: 'L', now: 'R', looked: done.signed?.by }]);
    expect(defect.corrected).toEqual(deferred.corrections);
    const [own] = (await inspector.get<Shapes['Signatures']>('/api/signatures')).signatures;
    expect(own).toMatchObject({ statement: done.signed?.statement, verifies: true });
    const answer = await tech.get<Shapes['Verdict']>(`/api/aircraft/${defect.aircraft}/answer`);
    expect(JSON.stringify(answer.gates)).not.toContain('second look');
    expect(answer.items.filter(({ entry }) => entry === '33-42-11').map(({ unit }) => unit)).toEqual(['R']);
  });

  it.each([
    ['another that the entry does not have', 'M', 'row-not-for-this-unit'],
    ['the one that stands there', '', 'invalid-input'],
  ])('is refused as %s', async (_, now, code) => {
    const { id } = await lineOf('deferred');
    const query = new URLSearchParams(queryOf({ of: id, field: 'unit', now })).toString();
    if (code === 'invalid-input') {
      expect(await tech.refused('GET', `/api/defects/${item}/statement?${query}`)).toMatchObject({ code });
      return;
    }
    const said = { of: id, field: 'unit', now };
    const problem = await tech.signRefused(item, 'correction', queryOf(said), { ...said, reason: 'x' });
    expect(problem).toMatchObject({ code });
  });
});

describe('what would change an answer or an interval', () => {
  it.each(['row', 'category', 'interval', 'entry'])('%s is refused with what to do instead', async (field) => {
    const { id, otherwise } = await lineOf('deferred');
    const query = new URLSearchParams(queryOf({ of: id, field, now: '2' })).toString();
    const problem = await tech.refused('GET', `/api/defects/${item}/statement?${query}`);
    const told = otherwise.find((one) => one.field === field);
    expect(problem).toMatchObject({ code: 'not-by-correction', next: told?.instead });
  });

  it('an act that is not there and a name that is none are refused', async () => {
    const nobody = '0b0c7f36-3d1c-4a43-9d0c-8f2f63a35a10';
    const gone = new URLSearchParams(queryOf({ of: nobody, field: 'unit', now: 'R' })).toString();
    expect(await tech.refused('GET', `/api/defects/${item}/statement?${gone}`)).toMatchObject({ status: 404 });
    const none = new URLSearchParams(queryOf({ of: nobody, field: 'colour', now: 'R' })).toString();
    expect(await tech.refused('GET', `/api/defects/${item}/statement?${none}`)).toMatchObject({ status: 422 });
  });
});

describe('what was entered of the work', () => {
  const part = { partNumber: 'PN-778', serialOn: 'S-100', serialOff: 'S-099' };

  it('is corrected by one signature, and stays as it was for who may not do such work', async () => {
    const work = { workDone: 'Lamp changed', reference: 'AMM 33-42 rev 4', complete: true };
    const asked = { testAsked: false, inspectionAsked: false };
    await tech.sign(item, 'rectification', { act: 'rectify' }, { ...work, ...asked, ...part });
    const { id, correctable } = await lineOf('rectification');
    expect(correctable.map(({ field, reads }) => [field, reads])).toEqual([
      ['workDone', 'Lamp changed'],
      ['reference', 'AMM 33-42 rev 4'],
      ['partNumber', 'PN-778'],
      ['serialOn', 'S-100'],
      ['serialOff', 'S-099'],
      ['certificate', null],
    ]);
    const said = { of: id, field: 'serialOn', now: 'S-101', part: 0 };
    const control = await server.signIn('brask');
    const refused = await control.signRefused(item, 'correction', queryOf(said), { ...said, reason: 'x' });
    expect(refused).toMatchObject({ code: 'authorisation-does-not-cover' });
    await correct(said);
    const after = await lineOf('rectification');
    expect(after.corrections).toMatchObject([{ field: 'the serial number fitted', was: 'S-100', now: 'S-101' }]);
    expect(after.words).toContain('serial S-100 fitted');
  });

  it('stands on paper with the first words, and the placard of another unit says what it was', async () => {
    const quality = await server.signIn('wenna');
    const response = await quality.page(`/api/defects/${item}/history.pdf`);
    const { text } = await readAll(response);
    for (const words of ['It read: S-100', 'It reads: S-101', 'It read: L', 'It reads: R', 'looked at by']) {
      expect(text).toContain(words);
    }
  });
});

describe('the limit of a document', () => {
  it('waits for a second person; its number does not', async () => {
    const { aircraft } = (await view()).defect;
    const said = { aircraft, origin: 'technician', description: 'Dent at frame 20.', recordedAt: clock };
    const { body } = await tech.post<Shapes['ActDone']>('/api/defects', said);
    const dent = body.defect.id;
    const document = { kind: 'approved-data', reference: 'SRM 53-1 rev 7', issuedBy: 'Maker', limit: 'Depth 12 mm' };
    await tech.sign(dent, 'deferral', { act: 'defer', document: 'approved data SRM 53-1 rev 7' }, { document });
    const of = (await view(dent)).history.at(-1)?.id ?? '';
    const one = { of, field: 'reference', now: 'SRM 53-1 rev 8' };
    const number = await tech.sign(dent, 'correction', queryOf(one), { ...one, reason: 'misread' });
    expect(number.defect.basis).toBe('approved data SRM 53-1 rev 8');
    const two = { of, field: 'limit', now: 'Depth 1.2 mm' };
    await tech.sign(dent, 'correction', queryOf(two), { ...two, reason: 'the point was lost' });
    const { defect, waiting } = await view(dent);
    expect(defect.waits).toEqual(['the limit of the document']);
    const look = { asked: waiting[0]?.id ?? '' };
    await inspector.sign(dent, 'second-look', { act: 'second-look', ...look }, look);
    expect((await view(dent)).history.find(({ id }) => id === of)?.corrections).toHaveLength(2);
  });
});

describe('when it was found', () => {
  it('is corrected with the write-up, with what then holds for that flight', async () => {
    const [written] = (await view()).history;
    const said = { of: written?.id ?? '', field: 'whenFound', now: 'after-take-off' };
    const done = await correct(said);
    expect(done.signed?.statement).toContain('the MEL gives no relief for that flight');
    expect(done.signed?.statement).toContain('an answer before the next departure is owed as before');
    const { defect, history } = await view();
    expect([defect.whenFound, defect.onItsFlight?.holds]).toEqual(['after-take-off', 'no-relief']);
    expect(history[0]?.corrections.at(-1)).toMatchObject({ was: null, now: 'after take-off' });
    const none = { ...said, now: 'at night' };
    const refused = await tech.signRefused(item, 'correction', queryOf(none), { ...none, reason: 'x' });
    expect(refused).toMatchObject({ code: 'correction-not-one-of' });
  });
});

describe('answers that say what is wrong', () => {
  const writeUp = async (recordedAt: string) => {
    const { aircraft } = (await view()).defect;
    const body = { aircraft, origin: 'crew', description: 'Chair 3C broken.', recordedAt, lateReason: 'found late' };
    return tech.refused('POST', '/api/defects', { body });
  };

  it.each([
    ['1900-01-01T00:00:00Z', 'has a year outside 1980 to 2199: too long ago'],
    ['2026-02-30T00:00:00Z', 'must be a real date and time'],
  ])('a log time of %s %s', async (recordedAt, reason) => {
    expect(await writeUp(recordedAt)).toMatchObject({
      status: 422,
      errors: [{ pointer: '/recordedAt', reason: expect.stringContaining(reason) }],
    });
  });

  it('a write-up is not joined to itself, and no more time is asked for what is rectified', async () => {
    const joining = { other: item, reason: 'the same' };
    const itself = await tech.signRefused(item, 'joining', { act: 'join' }, joining);
    expect(itself).toMatchObject({ code: 'joined-to-itself', status: 409 });
    const offer = await tech.get<Shapes['ExtensionOffer']>(`/api/defects/${item}/extension`);
    expect(offer.refused).toMatchObject({ sentence: expect.stringContaining('only waits for its release') });
  });
});

it('the tables still say what the record says', async () => {
  const { code, stdout } = await run(['record', 'compare', '--database', server.ownerUrl]);
  expect({ code, stdout }).toMatchObject({ code: 0 });
});

async function readAll(response: Response): Promise<{ text: string }> {
  const { pages } = await readPdf(new Uint8Array(await response.arrayBuffer()));
  return { text: pages.join(' ') };
}
