/** What is left on one aircraft, told through HTTP: found, owned, shared, moved, corrected, handed over, undone. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.js';
import { verifyRecord } from '#store';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

type View = Shapes['RegisterView'];

let clock = '2026-01-15T03:00:00.000Z';
let server: RunningServer;
let aircraft = '';
const people: Record<string, ApiClient> = {};
const as = (name: string): ApiClient => people[name] as ApiClient;

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  clock = '2026-01-15T12:00:00.000Z';
  for (const name of ['odrin', 'wick', 'brask', 'hebba', 'vio']) people[name] = await server.signIn(name);
  const fleet = await as('brask').get<Shapes['Fleet']>('/api/fleet');
  aircraft =
    fleet.aircraft.find(({ openItems, leftOnAircraft }) => openItems === 0 && leftOnAircraft === 0)?.id ?? '';
  if (aircraft === '') throw new Error('Every aircraft has something open.');
});

afterAll(() => server.stop());

const at = (path = ''): string => `/api/aircraft/${aircraft}/left${path}`;
const view = (): Promise<View> => as('brask').get<View>(at());
const answer = (): Promise<Shapes['Verdict']> => as('brask').get(`/api/aircraft/${aircraft}/answer`);

type Body = Record<string, unknown> & { asked?: string | undefined };

async function signing(name: string, act: string, body: Body): Promise<[object, { ifMatch: string }]> {
  const { etag } = await as(name).send('GET', at());
  const query = new URLSearchParams({ act, ...(body.asked ? { asked: body.asked } : {}) });
  const { statement } = await as(name).get<Shapes['Statement']>(at(`/statement?${query}`));
  return [{ ...body, sign: { secret: as(name).secret, statement } }, { ifMatch: etag ?? '' }];
}

async function act(name: string, address: string, of: string, body: Body): Promise<void> {
  await as(name).post(at(`/${address}`), ...(await signing(name, of, body)));
}

async function refused(name: string, address: string, of: string, body: Body) {
  const [signed, sending] = await signing(name, of, body);
  return as(name).refused('POST', at(`/${address}`), { ...sending, body: signed });
}

async function writtenUp(description: string): Promise<string> {
  const body = { aircraft, origin: 'technician', description, recordedAt: clock };
  return (await as('odrin').post<Shapes['ActDone']>('/api/defects', body)).body.defect.id;
}

const CB = { kind: 'breaker', where: 'panel P9, B4', tag: 'K-0900', undo: 'Remove the collar, reset the breaker.' };
const thing = async (tag = 'K-0900') => (await view()).left.find((line) => line.tag === tag) as View['left'][number];

describe('a thing that nobody owns', () => {
  it('keeps the aircraft on the ground from the moment anybody says it is there', async () => {
    const { etag } = await as('hebba').send('GET', at());
    await as('hebba').post(at('/found'), { items: [CB], remarks: 'seen on the walk-round' }, { ifMatch: etag ?? '' });
    expect((await view()).orphans).toEqual(['breaker at panel P9, B4 (K-0900)']);
    const verdict = await answer();
    expect(verdict.verdict).toBe('may-not-fly');
    expect(verdict.reasons.join(' ')).toContain('panel P9, B4');
  });

  it('is not found twice, and needs the register as it was read', async () => {
    const { etag } = await as('hebba').send('GET', at());
    const again = { body: { items: [{ ...CB, where: 'PANEL P9 B4', tag: 'K-0901' }] }, ifMatch: etag };
    expect(await as('hebba').refused('POST', at('/found'), again)).toMatchObject({ code: 'fitted-already' });
    const stale = await as('hebba').refused('POST', at('/found'), { ...again, ifMatch: '"1"' });
    expect(stale.code).toBe('changed-meanwhile');
  });

  it('has an owner once a document takes it, until that is over', async () => {
    const { id } = await thing();
    const document = { kind: 'permit', reference: 'PF-12', until: '2026-01-15T12:20:00Z' };
    await act('odrin', 'moves', 'move', { items: [id], document, together: false, reason: 'under the permit' });
    expect(await thing()).toMatchObject({ owner: 'permit PF-12', ownerKind: 'permit' });
    expect((await answer()).verdict).not.toBe('may-not-fly');
    clock = '2026-01-15T12:20:00.000Z';
    expect((await answer()).verdict).toBe('may-not-fly');
  });
});

describe('changing the owner', () => {
  let first = '';
  let second = '';

  it('moves it to an open item, and another may need it too', async () => {
    first = await writtenUp('Fan 1 stops.');
    second = await writtenUp('Fan 2 stops.');
    const { id } = await thing();
    await act('odrin', 'moves', 'move', { items: [id], defect: first, together: false, reason: 'pulled for fan 1' });
    await act('odrin', 'moves', 'move', { items: [id], defect: second, together: true, reason: 'for fan 2 as well' });
    expect(await thing()).toMatchObject({ defect: first, alsoFor: [{ defect: second }] });
  });

  it('lets neither undo it alone, and the last one may', async () => {
    const { id } = await thing();
    const alone = await as('odrin').signRefused(first, 'undone', { act: 'undo' }, { items: [id] });
    expect(alone.code).toBe('left-for-another-too');
    expect(alone.detail).toContain('/');
    await act('odrin', 'moves', 'move', { items: [id], defect: second, together: false, reason: 'fan 1 is mended' });
    expect(await thing()).toMatchObject({ defect: second, alsoFor: [] });
  });

  it('is refused to nobody, of what is not there, and by an operator that does not have the aircraft', async () => {
    const { id } = await thing();
    const body = { items: [id], together: false, reason: 'x' };
    expect(await refused('odrin', 'moves', 'move', body)).toMatchObject({ code: 'invalid-input' });
    expect(await as('vio').refused('GET', at())).toMatchObject({ code: 'not-found' });
  });

  it('leaves a correction unmade that another found wrong, or that whoever asked takes back', async () => {
    const { id } = await thing();
    const wrong = { item: id, field: 'where', now: 'panel P9, B5', reason: 'miscounted' };
    const askedBy = async () => {
      await act('odrin', 'corrections', 'correction', wrong);
      const [asked] = (await view()).corrections;
      return { asked: asked?.id, reason: 'Counted again.' };
    };
    const first = await askedBy();
    expect(await refused('odrin', 'as-written', 'as-written', first)).toMatchObject({ code: 'statement-not-shown' });
    expect(await refused('hebba', 'as-written', 'as-written', first)).toMatchObject({
      code: 'authorisation-does-not-cover',
    });
    await act('wick', 'as-written', 'as-written', first);
    expect((await view()).corrections).toEqual([]);
    await act('odrin', 'as-written', 'taken-back', await askedBy());
    expect([(await view()).corrections, (await thing()).where]).toEqual([[], 'panel P9, B4']);
    const over = at(`/statement?act=as-written&asked=${first.asked}`);
    expect(await as('wick').refused('GET', over)).toMatchObject({ code: 'correction-not-asked' });
  });

  it('names in what the second person signs the thing, and what it reads and should read; for no other correction', async () => {
    const { id } = await thing();
    const waits = async (field: string, now: string) => {
      await act('odrin', 'corrections', 'correction', { item: id, field, now, reason: 'misread' });
      return (await view()).corrections.find((one) => one.now === now)?.id;
    };
    const [ofPlace] = await signing('wick', 'second-look', { asked: await waits('where', 'panel P9, B5') });
    expect(ofPlace).toMatchObject({
      sign: {
        statement: expect.stringContaining(
          'and the place of breaker at panel P9, B4 (K-0900) is as the correction says: “panel P9, B5”. The register says “panel P9, B4”.',
        ),
      },
    });
    const number = await waits('tag', 'K-0901');
    const [, sending] = await signing('wick', 'second-look', { asked: number });
    const taken = { ...sending, body: { ...ofPlace, asked: number } };
    expect(await as('wick').refused('POST', at('/second-looks'), taken)).toMatchObject({
      code: 'statement-not-shown',
    });
    expect(await as('wick').refused('GET', at('/statement?act=second-look'))).toMatchObject({
      code: 'invalid-input',
      errors: [{ pointer: '/asked' }],
    });
    await act('odrin', 'as-written', 'taken-back', { asked: number, reason: 'Right after all.' });
  });

  it('puts a mistyped number right only after another person has looked', async () => {
    const { id } = await thing();
    const wrong = { item: id, field: 'tag', now: 'K-0909', reason: 'misread in the dark' };
    await act('odrin', 'corrections', 'correction', wrong);
    const [asked] = (await view()).corrections;
    expect(asked).toMatchObject({ was: 'K-0900', now: 'K-0909', by: 'Odrin Vask' });
    expect(await refused('odrin', 'second-looks', 'second-look', { asked: asked?.id })).toMatchObject({
      code: 'same-person-looking',
      status: 403,
    });
    await act('wick', 'second-looks', 'second-look', { asked: asked?.id });
    expect(await thing('K-0909')).toMatchObject({ where: 'panel P9, B4' });
    expect((await view()).corrections).toEqual([]);
  });

  it('hands the shift over on a list that both sign, and not when it changed meanwhile', async () => {
    await act('odrin', 'hand-overs', 'give', { to: 'night shift', note: 'mind the collar' });
    const given = (await view()).offered;
    expect(given?.left).toEqual([expect.stringContaining('breaker at panel P9, B4 (K-0909), for ')]);
    expect(await refused('odrin', 'hand-overs-taken', 'take', { given: given?.id })).toMatchObject({
      code: 'same-person-taking',
    });
    const { id } = await thing('K-0909');
    await as('odrin').sign(second, 'undone', { act: 'undo' }, { items: [id] });
    const changed = await refused('wick', 'hand-overs-taken', 'take', { given: given?.id });
    expect(changed).toMatchObject({ code: 'changed-since-given' });
    expect(changed.detail).toContain('no longer: breaker at panel P9, B4');
    await act('odrin', 'hand-overs', 'give', { to: 'night shift' });
    await act('wick', 'hand-overs-taken', 'take', { given: (await view()).offered?.id, remarks: 'walked round' });
    expect((await view()).lastTaken).toMatchObject({ by: 'Odrin Vask', takenBy: 'Wick Straddock' });
  });
});

describe('what stays of it', () => {
  it('is printed by the command, with what it belongs to', async () => {
    const owner = { kind: 'modification', reference: 'MOD 27-114' };
    const pin = { kind: 'lock-pin', where: 'gear 2', tag: 'PIN-7', undo: 'Pull it out.' };
    await act('odrin', 'fitted', 'fitted', { items: [pin], owner });
    const { registration } = await view();
    const { code, stdout } = await run(['left', '--aircraft', registration, '--database', server.ownerUrl]);
    expect(code).toBe(0);
    expect(stdout).toContain('lock pin at gear 2 (PIN-7), for modification MOD 27-114');
    expect(await run(['left', '--aircraft', 'Q-NONE', '--database', server.ownerUrl])).toMatchObject({ code: 2 });
  });

  it('of a document is corrected after a second look, in the register as in its history', async () => {
    const { id } = await thing('PIN-7');
    const wrong = { item: id, field: 'where', now: 'gear 3', reason: 'miscounted' };
    const asked = async () => {
      await act('odrin', 'corrections', 'correction', wrong);
      return (await view()).corrections[0]?.id;
    };
    await act('odrin', 'as-written', 'taken-back', { asked: await asked(), reason: 'Gear 2 after all.' });
    expect(await thing('PIN-7')).toMatchObject({ where: 'gear 2' });
    await act('wick', 'second-looks', 'second-look', { asked: await asked() });
    expect(await thing('PIN-7')).toMatchObject({ where: 'gear 3' });
    expect((await view()).corrections).toEqual([]);
    const { code, stdout } = await run(['record', 'compare', '--database', server.ownerUrl]);
    expect({ code, stdout }).toMatchObject({ code: 0 });
  });

  it('is undone by one and seen by another, and stays readable', async () => {
    const { id } = await thing('PIN-7');
    await act('odrin', 'removed', 'removed', { items: [id] });
    expect(await refused('odrin', 'seen', 'seen', { items: [id] })).toMatchObject({ code: 'same-person-looking' });
    await act('wick', 'seen', 'seen', { items: [id] });
    expect((await view()).undone.find(({ tag }) => tag === 'PIN-7')).toMatchObject({
      removedBy: 'Odrin Vask',
      verifiedBy: 'Wick Straddock',
    });
  });

  it('is in the record, which verifies', async () => {
    await expect
      .poll(async () => (await verifyRecord(server.ownerUrl)).map(({ misfit, waiting }) => [misfit, waiting]), {
        timeout: 30_000,
      })
      .toEqual([
        [null, 0],
        [null, 0],
      ]);
  });
});
