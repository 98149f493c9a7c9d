/**
 * What an operator never extends, and telling the authority of what it did extend: by its time, with a reference, on paper.
 *
 * Notices by X-06 (SEEN-Q) and X-07 (FROM MEMORY); refusals by X-01, X-02 and X-03 (SEEN-Q, SEEN).
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.js';
import type { Shapes } from '../support/api-client.js';
import { ExtensionScene, PRESETS, type PresetTried, type Who } from './extensions-scene.js';

const scene = new ExtensionScene();
const extended = { easa: '', faa: '' };

beforeAll(async () => {
  await scene.open();
  for (const preset of PRESETS) extended[preset] = await scene.deferred(preset, 'Q-ABF', '33-11-01');
  await scene.goTo('2026-02-05T23:30:00.000Z');
  for (const preset of PRESETS) {
    await scene.ask(preset, extended[preset]);
    await scene.grant(preset, extended[preset]);
  }
});

afterAll(() => scene.server.stop());

describe('the notice to the authority', () => {
  const noting = async (preset: PresetTried, who: Who = 'control') => {
    const { id } = await scene.granted(preset);
    const client = scene.as(who, preset);
    const { etag } = await client.send('GET', `/api/extensions/${id}`);
    return { client, path: `/api/extensions/${id}/notice`, ifMatch: etag };
  };
  const noted = async (preset: PresetTried, body: object) => {
    const { client, path, ifMatch } = await noting(preset);
    return (await client.post<Shapes['ExtensionDone']>(path, body, { ifMatch })).body.extension.notice;
  };
  const refused = async (preset: PresetTried, body: object, who: Who = 'control') => {
    const { client, path, ifMatch } = await noting(preset, who);
    return (await client.refused('POST', path, { body, ifMatch })).code;
  };
  const sent = { what: 'sent', at: '2026-02-07T09:00:00Z', reference: 'letter 41' };

  it('is due within 24 hours (X-06), or within a month (X-07)', async () => {
    const due = { faa: '2026-02-06T23:30:00.000Z', easa: '2026-03-05T23:30:00.000Z' };
    for (const preset of PRESETS) {
      const { notice, decided, lastDayBefore, lastDay } = await scene.granted(preset);
      expect(decided).toEqual({ by: 'Pell Ravik', at: scene.clock, because: null });
      expect([lastDayBefore, lastDay]).toEqual(['2026-02-05', '2026-02-15']);
      expect(notice).toMatchObject({ state: 'due', late: false, dueAt: due[preset], sent: null });
    }
    expect((await scene.granted('faa')).notice?.words).toBe('due by 6 Feb 2026 23:30 UTC');
  });

  it('stands out by its word when it is overdue', async () => {
    await scene.goTo('2026-02-07T11:00:00.000Z');
    expect((await scene.register('faa')).overdue).toBe(1);
    expect((await scene.granted('faa')).notice).toMatchObject({
      state: 'overdue',
      late: true,
      words: 'OVERDUE: was due by 6 Feb 2026 23:30 UTC and is not sent',
    });
    expect((await scene.register('easa')).overdue).toBe(0);
  });

  it('is sent once, neither in the future nor before the grant, and acknowledged after that', async () => {
    expect(await refused('easa', { ...sent, what: 'acknowledged' })).toBe('notice-out-of-order');
    expect(await refused('easa', { ...sent, at: '2026-02-08T09:00:00Z' })).toBe('invalid-input');
    expect(await refused('easa', { ...sent, at: '2026-02-05T23:29:00Z' })).toBe('invalid-input');
    expect(await refused('easa', sent, 'technician')).toBe('role-missing');
    expect(await noted('easa', sent)).toMatchObject({ state: 'sent', late: false, sent: { by: 'Mellory Gand' } });
    expect(await refused('easa', sent)).toBe('notice-out-of-order');
    const acknowledged = { what: 'acknowledged', at: '2026-02-07T10:00:00Z', reference: 'answer 7' };
    expect(await refused('easa', { ...acknowledged, at: '2026-02-07T08:00:00Z' })).toBe('invalid-input');
    expect((await noted('easa', acknowledged))?.words).toBe(
      'sent 7 Feb 2026 09:00 UTC, reference letter 41; acknowledged 7 Feb 2026 10:00 UTC, reference answer 7',
    );
    expect(await refused('easa', acknowledged)).toBe('notice-out-of-order');
  });

  it('stays late once it was sent late, and is overdue no longer', async () => {
    const notice = await noted('faa', sent);
    expect(notice).toMatchObject({ state: 'sent', late: true });
    expect(notice?.words).toContain('LATE: was due by 6 Feb 2026 23:30 UTC');
    expect((await scene.register('faa')).overdue).toBe(0);
  });

  it('is refused under a version that somebody changed meanwhile', async () => {
    const { client, path } = await noting('faa');
    const body = { ...sent, what: 'acknowledged' };
    expect((await client.refused('POST', path, { body, ifMatch: '"1"' })).code).toBe('changed-meanwhile');
    expect((await client.refused('POST', path, { body })).code).toBe('precondition-required');
  });

  it('prints as a document of its own, with every text in it as text', async () => {
    const { notice } = await scene.granted('easa');
    const response = await scene.as('granter', 'easa').page(notice?.address ?? '');
    expect(response.status).toBe(200);
    expect(response.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(response.headers.get('content-security-policy')).toContain("default-src 'none'");
    const page = (await response.text()).replace(/\s+/g, ' ');
    expect(page).not.toContain('<script');
    for (const words of [
      '&lt;script&gt;alert(1)&lt;/script&gt;',
      'No part at any station &amp; none to borrow',
      '@media print',
      'MEL 33-11-01 row 1 (category C)',
      '15 Feb 2026, that is before 16 Feb 2026 00:00 UTC',
      '5 Feb 2026, that is before 6 Feb 2026 00:00 UTC',
      'Part arrives 8 Feb',
      'KL-4471-2, order 7731',
      'Sibba Orn, 5 Feb 2026 23:30 UTC',
      'Pell Ravik, licence QX.granter-easa, authorisation QPE-granter-easa of Works of QPE (Q.QPE)',
      'OM-A 8.6.1',
      '5 Mar 2026 23:30 UTC',
      'reference letter 41',
      'INVENTED for demonstration',
    ])
      expect(page).toContain(words);
  });

  it('says a text that two people put right, and whoever signs reads that the authority was told the first', async () => {
    const preset = 'easa';
    const { defect, id } = await scene.granted(preset);
    const granter = scene.as('granter', preset);
    const view = () => granter.get<Shapes['DefectView']>(`/api/defects/${defect}`);
    const of = (await view()).history.find(({ act }) => act === 'extended')?.id ?? '';
    const end = (await view()).defect.deadline;
    const said = { of, field: 'plan', now: 'Part arrives 9 Feb, fitted the same night' };
    const words = 'misread from the order';
    const done = await granter.sign(defect, 'correction', { act: 'correct', ...said }, { ...said, reason: words });
    expect(done.signed?.statement).toMatch(
      /the plan to rectify it reads "Part arrives 9 Feb.*stands as it was granted/,
    );
    expect(done.signed?.statement).toContain('The authority was told the first words at 7 Feb 2026 09:00 UTC');
    expect((await scene.granted(preset)).asked.plan).toContain('8 Feb');
    const asked = (await view()).waiting[0]?.id ?? '';
    const looking = { act: 'second-look', asked };
    await scene.as('inspector', preset).sign(defect, 'second-look', looking, { asked });
    expect((await scene.granted(preset)).asked.plan).toContain('9 Feb');
    const page = await (await granter.page(`/api/extensions/${id}/notice`)).text();
    expect([page.includes('Part arrives 9 Feb'), page.includes('Part arrives 8 Feb')]).toEqual([true, false]);
    expect((await view()).defect.deadline).toEqual(end);
    const corrections = (await view()).history.find(({ act }) => act === 'extended')?.corrections;
    expect(corrections).toMatchObject([{ field: 'the plan to rectify it', was: expect.stringContaining('8 Feb') }]);
    const compared = await run(['record', 'compare', '--database', scene.server.ownerUrl]);
    expect(compared).toMatchObject({ code: 0 });
  });

  it('exists only for what was granted, and for nobody of another operator', async () => {
    const waiting = await scene.deferred('easa', 'Q-ABG', '33-11-01');
    const { id: open } = (await scene.ask('easa', waiting)).body.extension;
    const control = scene.as('control', 'easa');
    expect((await control.refused('GET', `/api/extensions/${open}/notice`)).code).toBe('not-found');
    const body = { what: 'sent', at: scene.clock, reference: 'x' };
    const early = await control.refused('POST', `/api/extensions/${open}/notice`, { body, ifMatch: '"1"' });
    expect(early.code).toBe('notice-out-of-order');
    const { id } = await scene.granted('easa');
    const foreign = scene.as('control', 'faa');
    for (const path of [`/api/extensions/${id}`, `/api/extensions/${id}/notice`]) {
      expect((await foreign.refused('GET', path)).code).toBe('not-found');
    }
  });
});

describe('what the operator never extends', () => {
  it('category A and counted clocks (X-03), category D under faa (X-01) and not under easa (X-02)', async () => {
    for (const preset of PRESETS) {
      const counted = await scene.deferred(preset, 'Q-ABH', '33-11-03');
      const refusal = await scene.askRefused(preset, counted);
      expect(refusal).toMatchObject({ code: 'category-a-not-extendable', status: 409 });
      expect(refusal['paragraph']).toContain('ORO.MLR.105(f)');
    }
    const easa = await scene.deferred('easa', 'Q-ABF', '33-11-02');
    const faa = await scene.deferred('faa', 'Q-ABF', '33-11-02');
    expect((await scene.askRefused('faa', faa)).code).toBe('category-not-extendable');
    expect((await scene.ask('easa', easa, { days: 7 })).body.extension.asked.days).toBe(7);
  });

  it('nothing without an approved procedure', async () => {
    await scene.server.store.withOperator(scene.airline('easa').operator, null, async (tx) => {
      const { version, settings } = await tx.operators.current();
      const { extensionProcedure: _held, ...rest } = settings;
      await tx.operators.changeSettings(version, rest);
    });
    const id = await scene.deferred('easa', 'Q-ABH', '33-11-01');
    const refusal = await scene.askRefused('easa', id);
    expect(refusal).toMatchObject({ code: 'no-extension-procedure', status: 409 });
    expect(refusal.next).toContain('ask the authority');
  });

  it('a request can be withdrawn by the one who made it, or declined by another, with the reason', async () => {
    const id = await scene.deferred('faa', 'Q-ABH', '33-11-01');
    const close = async (who: Who) => {
      const closing = scene.as(who, 'faa');
      const { body } = await closing.post<Shapes['ExtensionDone']>(
        `/api/defects/${id}/extension-request/closed`,
        { because: 'the part came' },
        { ifMatch: await closing.seen(id) },
      );
      return [body.extension.words, body.extension.decided?.because];
    };
    await scene.ask('faa', id);
    expect(await close('engineer')).toEqual(['withdrawn', 'the part came']);
    await scene.ask('faa', id);
    expect(await close('granter')).toEqual(['declined', 'the part came']);
    const none = await scene.as('granter', 'faa').refused('GET', `/api/defects/${id}/statement?act=extend`);
    expect(none.code).toBe('no-extension-asked');
  });
});

it('the record holds each step without a name in it', async () => {
  const { entries } = await scene
    .as('control', 'faa')
    .get<Shapes['RecordEntries']>(`/api/record?aircraft=${scene.aircraft('faa', 'Q-ABF')}`);
  const steps = entries.map(({ what }) => what);
  expect(steps).toEqual(expect.arrayContaining(['extension.asked', 'defect.extended', 'extension.notice-sent']));
  expect(JSON.stringify(entries.map(({ payload }) => payload))).not.toMatch(/Orn|Ravik|Gand/);
});
