/** One defect, told from write-up to release (story 1 of the published first week, DERIVED; the rest is invented). */
import { describe, expect, it } from 'vitest';
import type { Act, LeftItem } from './acts.js';
import { defer } from './deferring/defer.js';
import { signProcedure } from './deferring/sign-procedure.js';
import type { DefectLife } from './defect-life.js';
import { extendInterval } from './extending/extend.js';
import { aircraftGates } from './flying/aircraft-gates.js';
import { mayDispatch } from './flying/may-dispatch.js';
import { actor, AIRCRAFT, context, offer, refusalOf, signed, goneOver } from './invented.fixture.js';
import { fitPlacard } from './leaving/fit-placard.js';
import { removePlacard } from './leaving/remove-placard.js';
import { undoLeft } from './leaving/undo.js';
import { inspect } from './rectifying/inspect.js';
import { recordTest } from './rectifying/record-test.js';
import { rectify } from './rectifying/rectify.js';
import { release } from './rectifying/release.js';
import { restore } from './rectifying/restore.js';
import { proceed, replay } from './replay.js';
import { standing } from './standing.js';
import { identify } from './writing-up/identify.js';
import { writeUp } from './writing-up/write-up.js';

const PARIS = { settings: { base: 'Europe/Paris' } };
const offered = offer({
  category: 'B',
  procedures: [
    {
      id: 'M1',
      kind: 'M',
      text: 'Pull and collar the breaker of the servo.',
      leaves: [{ kind: 'breaker', where: 'P11-C4', undo: 'remove the collar, push in' }],
    },
  ],
  placard: { text: 'AP 1 INOP', position: 'glareshield' },
});

describe('the life of a defect', () => {
  let life: DefectLife;
  const next = (acts: Act[]): void => {
    life = proceed(life, acts);
  };
  const leaving = (offBlockAt: string): string[] =>
    mayDispatch(life, { id: 'QX 118', offBlockAt }).because.map(({ code }) => code);
  const gates = () => aircraftGates([life], [], [], '2026-10-25T05:00+01:00');

  it('begins on a paper sheet late in the evening, and is typed in after midnight, in the second 02:20', () => {
    const command = {
      id: '1',
      defect: 'D118',
      by: actor('commander', { role: 'commander' }),
      aircraft: AIRCRAFT,
      origin: 'crew' as const,
      sheet: '118',
      description: 'Autopilot 1 disconnects by itself.',
      recordedAt: '2026-10-24T23:40+02:00',
      lateReason: 'no signal at the stand',
    };
    life = replay(writeUp(null, command, context('2026-10-25T02:20+01:00', PARIS)));
    expect(life).toMatchObject({
      sheet: '118',
      recordedAt: '2026-10-24T23:40+02:00',
      enteredAt: '2026-10-25T02:20+01:00',
    });
    expect(gates().unanswered).toEqual(['D118: Autopilot 1 disconnects by itself.']);
    expect(leaving('2026-10-25T05:00+01:00')).toEqual(['unanswered']);
  });

  it('is answered by a deferral whose three days are 73 hours, for the clocks go back (I-23, DERIVED)', () => {
    const at = '2026-10-25T02:50+01:00';
    const item = { entry: '22-10-01', subEntry: 'all', units: ['1'] };
    next(identify(life, { id: '2', by: actor('tech'), item, installed: ['1', '2'] }, context(at, PARIS)));
    const command = { id: '3', by: signed('tech', at), basis: { kind: 'mel-row', row: '1' } } as const;
    next(defer(life, command, context(at, { ...PARIS, offered })));
    expect(life.limits[0]?.clock).toMatchObject({
      lastDay: '2026-10-27',
      startsAt: '2026-10-24T22:00:00Z',
      endsAt: '2026-10-27T23:00:00Z',
      lengthHours: 73,
    });
    expect(gates().unanswered).toEqual([]);
  });

  it('may fly once the procedure is signed with what it leaves, and the placard is fitted', () => {
    const at = '2026-10-25T03:10+01:00';
    expect(leaving('2026-10-25T05:00+01:00')).toEqual(['procedure-not-signed', 'placard-not-fitted']);
    const breaker: LeftItem = {
      id: 'b22',
      kind: 'breaker',
      where: 'P11-C4',
      tag: '22',
      undo: 'remove the collar, push in',
    };
    next(
      signProcedure(
        life,
        { id: '4', by: signed('tech', at), work: '22-10-01/1/M1', leaves: [breaker] },
        context(at, PARIS),
      ),
    );
    const placard = { id: 'p9', by: signed('tech', at), text: 'AP 1 INOP', position: 'glareshield', tag: 'P-9' };
    next(fitPlacard(life, placard, context(at, PARIS)));
    expect(leaving('2026-10-25T05:00+01:00')).toEqual([]);
  });

  it('may leave in the last minute of 27 October local, and not five minutes into the 28th', () => {
    expect(leaving('2026-10-27T23:50+01:00')).toEqual([]);
    expect(leaving('2026-10-28T00:05+01:00')).toEqual(['past-the-deadline']);
  });

  it('is extended once, in time, by another person, because the part is held in customs', () => {
    const at = '2026-10-27T20:00+01:00';
    const request = {
      by: actor('engineer', { role: 'engineer' }),
      requestedAt: '2026-10-27T18:00+01:00',
      reason: 'the part is held in customs',
      outsideOperatorsControl: true,
      whyNotFixed: 'no part at any station',
      plan: 'fitted on 29 October at the base',
    };
    next(extendInterval(life, { id: '6', by: signed('quality', at), request }, context(at, PARIS)));
    expect(standing(life, at).deadline).toMatchObject({ lastDay: '2026-10-30', endsAt: '2026-10-30T23:00:00Z' });
    expect(
      refusalOf(() => extendInterval(life, { id: '7', by: signed('quality', at), request }, context(at, PARIS))).code,
    ).toBe('second-extension');
  });

  it('is rectified; while the work is open the aircraft stays', () => {
    const at = '2026-10-29T22:00+01:00';
    const work = { workDone: 'servo replaced', reference: 'AMM 22-11 rev 7', complete: true };
    const asked = { testAsked: true, inspectionAsked: true };
    next(rectify(life, { id: '8', by: signed('tech', at), ...work, ...asked }, context(at, PARIS)));
    expect(gates().openWork).toHaveLength(1);
    expect(standing(life, at).state).toBe('rectified, not released');
  });

  it('is not released before the collar and the placard are off, the test is good and a second person looked', () => {
    const at = '2026-10-29T23:00+01:00';
    const by = signed('tech', at);
    const given = context(at, PARIS);
    const out = () => release(life, { id: '14', by, outcome: 'closed' }, given);
    expect(refusalOf(out).code).toBe('test-not-good');
    next(recordTest(life, { id: '9', by, test: 'autopilot test', result: 'good' }, given));
    expect(refusalOf(out, 'still-left-on-the-aircraft').message).toContain(
      'breaker at P11-C4 (22); placard at glareshield',
    );
    next(undoLeft(life, { id: '10', by, items: ['b22'] }, given));
    next(removePlacard(life, { id: '11', by, item: 'p9' }, given));
    expect(refusalOf(out).code).toBe('not-restored');
    next(restore(life, { id: '12', by, reference: 'AMM 22-11 rev 7' }, given));
    expect(refusalOf(out, 'not-generally-verified').message).toContain('tools accounted for');
    life = goneOver(life, by, at);
    expect(refusalOf(out).code).toBe('inspection-not-done');
    expect(refusalOf(() => inspect(life, { id: '13', by, findings: 'no findings' }, given)).code).toBe(
      'same-person-inspecting',
    );
    next(inspect(life, { id: '13', by: signed('second', at), findings: 'no findings' }, given));
    next(out());
  });

  it('ends released, with its whole history readable and the same when it is played again', () => {
    expect(standing(life, '2026-10-30T08:00+01:00')).toMatchObject({
      state: 'closed',
      open: false,
      leftOnTheAircraft: [],
    });
    expect(gates()).toEqual({ unanswered: [], openWork: [], orphans: [] });
    expect(leaving('2026-12-24T12:00Z')).toEqual([]);
    expect(replay(life.acts)).toEqual(life);
  });
});
