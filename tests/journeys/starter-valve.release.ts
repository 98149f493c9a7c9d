import { expect, it } from 'vitest';
import { verifyRecord } from '#store';
import type { Shapes } from '../support/api-client.js';
import { answerFor, control, defectView, lineOfFleet, quality, story, technician } from './starter-valve.scene.js';

/** From the work in the evening until nothing is open, and what can be proved of it afterwards. */
export function toldUntilItIsReleased(): void {
  it('so it is mended at the base that evening; open work grounds the aircraft again', async () => {
    story.clock = '2026-01-15T20:10:00.000Z';
    await technician().sign(
      story.defect,
      'rectification',
      { act: 'rectify' },
      {
        workDone: 'Start valve of engine 1 replaced.',
        reference: 'K-AMM 80-12-11 task 7, revision 12',
        partNumber: 'KV-8012-1',
        serialOff: 'S-1190',
        serialOn: 'S-2044',
        complete: true,
        testAsked: true,
        inspectionAsked: false,
      },
    );
    const verdict = await answerFor('QOF 111');
    expect(verdict.verdict).toBe('may-not-fly');
    expect(verdict.reasons[0]).toMatch(/^Work is open that is not released: Q-KEA\/2 /);
  });

  it('without the test that was asked for nothing is released', async () => {
    const refusal = await technician().signRefused(story.defect, 'release', { act: 'release' });
    expect(refusal).toMatchObject({ code: 'test-not-good', status: 409 });
  });

  it('the test is good, and closing is still refused: the collar and the placard are on the aircraft', async () => {
    story.clock = '2026-01-15T20:40:00.000Z';
    await technician().sign(
      story.defect,
      'test',
      { act: 'test' },
      {
        test: 'Engine 1 started twice by the switch; valve opens and closes, K-AMM 80-12-11 task 8.',
        result: 'good',
      },
    );
    for (const [address, body] of [['release', {}] as const, ['restoration', { reference: 'K-AMM' }] as const]) {
      const query = { act: address === 'release' ? 'release' : 'restore' };
      const refusal = await technician().signRefused(story.defect, address, query, body);
      expect(refusal).toMatchObject({
        code: 'still-left-on-the-aircraft',
        status: 409,
        paragraph: '145.A.48; 145.A.50(a)',
      });
      expect(refusal.detail).toContain('collar K-0311');
      expect(refusal.detail).toContain('P-2301');
    }
  });

  it('they are undone and signed for, the system is restored, and the work is released', async () => {
    story.clock = '2026-01-15T21:00:00.000Z';
    const { left } = await defectView();
    await technician().sign(story.defect, 'undone', { act: 'undo' }, { items: left.map(({ id }) => id) });
    const again = await technician().signRefused(story.defect, 'undone', { act: 'undo' }, { items: [left[0]?.id] });
    expect(again.code).toBe('left-item-unknown');
    const early = await technician().signRefused(story.defect, 'release', { act: 'release' });
    expect(early.code).toBe('not-restored');
    const reference = 'K-AMM 80-12-11 task 7, revision 12';
    await technician().sign(story.defect, 'restoration', { act: 'restore' }, { reference });
    const unseen = await technician().signRefused(story.defect, 'release', { act: 'release' });
    expect(unseen).toMatchObject({ code: 'not-generally-verified', paragraph: '145.A.48(a)' });
    expect(unseen.detail).toContain('tools accounted for; panels and cowls closed');
    const all = { toolsAccounted: true, panelsClosed: true, registerChecked: true };
    await technician().sign(story.defect, 'verification', { act: 'verify' }, all);
    const done = await technician().sign(story.defect, 'release', { act: 'release' });
    expect(done.defect.state).toBe('closed');
    expect(done.signed?.statement).toContain('Part-145');
  });

  it('nothing is open, nothing is left, and the morning flight reads so', async () => {
    expect(await lineOfFleet()).toMatchObject({
      openItems: 0,
      unanswered: 0,
      leftOnAircraft: 0,
      nextDeadline: null,
      nextFlight: { verdict: 'nothing-open', flight: { number: 'QOF 111' } },
    });
    const list = await control().get<Shapes['DefectList']>('/api/defects');
    expect(list.defects.some(({ id }) => id === story.defect)).toBe(false);
  });

  it('a closed defect takes no further act', async () => {
    const query = { act: 'raised-in-error' };
    const refusal = await technician().signRefused(story.defect, 'raised-in-error', query, {
      words: 'Wrong aircraft.',
    });
    expect(refusal).toMatchObject({ code: 'already-closed', status: 409 });
  });

  it('the history tells it in order: who, on which authorisation, under which statement, and its three times', async () => {
    const { history } = await defectView();
    const told = history.filter(({ act }) => act !== 'card-stepped');
    expect(told.map(({ act, by }) => `${act} by ${by}`)).toEqual([
      'written-up by Hebba Strinn',
      'identified by Odrin Vask',
      'deferred by Odrin Vask',
      'procedure-signed by Odrin Vask',
      'placard-fitted by Odrin Vask',
      'card-started by Odrin Vask',
      'card-signed by Odrin Vask',
      'procedure-signed by Hebba Strinn',
      'rectification by Odrin Vask',
      'tested by Odrin Vask',
      'undone by Odrin Vask',
      'restored by Odrin Vask',
      'generally-verified by Odrin Vask',
      'released by Odrin Vask',
    ]);
    expect(history[0]).toMatchObject({
      occurredAt: '2026-01-15T08:36:00Z',
      recordedAt: '2026-01-15T14:05:00+02:00',
      enteredAt: '2026-01-15T12:12:00.000Z',
      statement: null,
    });
    expect(history.at(-1)).toMatchObject({
      words: 'Released to service',
      licence: 'QX.66.20417',
      authorisation: 'QOF-L-011',
      organisation: 'Orrinfell Line Maintenance (QX-MNT-0207)',
    });
  });

  it('the record holds every act under a number of its own, without a name in it, and verifies', async () => {
    let entries: Shapes['RecordEntries']['entries'] = [];
    await expect
      .poll(
        async () => {
          ({ entries } = await quality().get<Shapes['RecordEntries']>(`/api/record?aircraft=${story.aircraft}`));
          return entries.every(({ number }) => number !== null);
        },
        { timeout: 30_000 },
      )
      .toBe(true);
    const { history } = await defectView();
    const ours = entries.filter(({ payload }) => (payload as { number?: number }).number === 2);
    expect(ours.map(({ what }) => what)).toEqual(history.map(({ act }) => `defect.${act}`));
    expect(ours.map(({ number }) => number)).toEqual(history.map(({ sealedAs }) => sealedAs));
    expect(entries.filter(({ what }) => what === 'fact.answered')).toHaveLength(1);
    expect(JSON.stringify(ours.map(({ payload }) => payload))).not.toMatch(/Vask|Strinn|QX\.66/);
    const head = await quality().get<Shapes['RecordHead']>('/api/record/head');
    const findings = await verifyRecord(story.server.ownerUrl);
    expect(findings.map(({ misfit, waiting }) => ({ misfit, waiting }))).toEqual([
      { misfit: null, waiting: 0 },
      { misfit: null, waiting: 0 },
    ]);
    expect(findings.find(({ operatorCode }) => operatorCode === 'QOF')?.head).toMatchObject(head);
  });
}
