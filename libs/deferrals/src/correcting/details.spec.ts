import { describe, expect, it } from 'vitest';
import type { Act, CorrectableField } from '../acts.js';
import { join } from '../answering/join.js';
import { enterGrant } from '../extending/enter-grant.js';
import { goneOver, identifiedAs, refusalOf, signed, writtenUp } from '../invented.fixture.js';
import { recordTest } from '../rectifying/record-test.js';
import { rectify } from '../rectifying/rectify.js';
import { release } from '../rectifying/release.js';
import { proceed, replay } from '../replay.js';
import { askCorrection } from './ask-correction.js';
import { asCorrected, withDetail } from './as-corrected.js';
import { correct } from './correct.js';
import { asked, at, deferred, given, second, tech } from './corrections.fixture.js';
import { detailsOf } from './details.js';
import { NEVER_CORRECTED, notByCorrection, putRightOtherwise } from './put-right-otherwise.js';
import { readsNow } from './reads-now.js';

const worked = proceed(deferred, [
  ...rectify(
    deferred,
    {
      id: 'w',
      by: tech,
      workDone: 'Computer replaced.',
      reference: 'AMM 22-10 rev 4',
      complete: true,
      testAsked: true,
      parts: [
        { partNumber: 'PN-1', serialOn: 'S-10', serialOff: 'S-9' },
        { partNumber: 'PN-2', certificate: 'B-7' },
      ],
    },
    given,
  ),
]);
const tested = proceed(
  worked,
  recordTest(worked, { id: 't', by: tech, test: 'Channel 1 engages', result: 'good' }, given),
);

const one = (act: string, field: CorrectableField, now: string, part?: number) =>
  asked(tested, { act, field, now, ...(part === undefined ? {} : { part }) });

describe('what was entered of the work', () => {
  it.each([
    ['w', 'workDone', 'Both computers replaced.', undefined],
    ['w', 'reference', 'AMM 22-11 rev 4', undefined],
    ['w', 'partNumber', 'PN-3', 1],
    ['w', 'serialOn', 'S-11', 0],
    ['w', 'serialOff', 'S-8', 0],
    ['w', 'serialOn', 'S-20', 1],
    ['w', 'certificate', 'B-8', 1],
    ['t', 'test', 'Channel 2 engages', undefined],
  ] as const)('of %s, %s reads %s, and nothing else does', (act, field, now, part) => {
    const command = one(act, field, now, part);
    const corrected = proceed(tested, correct(tested, command, given));
    expect(readsNow(corrected, { act, field, item: null, ...(part === undefined ? {} : { part }) })).toBe(now);
    expect(corrected.acts.slice(0, -1)).toEqual(tested.acts);
    const back = proceed(
      corrected,
      correct(corrected, { ...command, id: 'b', was: now, now: command.was ?? ' ?' }, given),
    );
    if (command.was !== null) expect({ ...back, acts: [] }).toEqual({ ...tested, acts: [] });
    expect(replay(corrected.acts)).toEqual(corrected);
  });

  it.each([
    ['partNumber', 0, { partNumber: 'S-2' }, 'S-2'],
    ['certificate', 0, { batch: 'B-9' }, 'B-9'],
    ['certificate', 1, { certificate: 'F1-9' }, 'F1-9'],
  ] as const)('of a part that a step of a card renewed, %s (%s) is written', (field, part, reads, now) => {
    for (const paper of [{}, { certificate: 'F1-8' }]) {
      const result = { kind: 'renewed', partNumber: 'S-1', batch: 'B-8', count: 2, ...paper };
      const step = { kind: 'card-stepped', id: 's', step: 'seals', result } as unknown as Act;
      expect(withDetail(step, { field, part, now })).toEqual({ ...step, result: { ...result, ...reads } });
      expect(detailsOf(step).map((detail) => [detail.field, detail.many(step)])).toEqual([
        ['partNumber', 1],
        ['certificate', 2],
      ]);
    }
  });

  it('is what the open work says, with the test that was made of it', () => {
    const corrected = proceed(tested, correct(tested, one('w', 'serialOn', 'S-11', 0), given));
    expect(corrected.work?.done[0]?.parts[0]).toEqual({ partNumber: 'PN-1', serialOn: 'S-11', serialOff: 'S-9' });
    expect(corrected.work?.tested?.result).toBe('good');
  });

  it('is refused for a part that is not there, and for one that reads otherwise', () => {
    const wrong = (command: ReturnType<typeof one>) => refusalOf(() => correct(tested, command, given)).code;
    expect(wrong(one('w', 'partNumber', 'PN-9', 2))).toBe('correction-of-nothing');
    expect(wrong({ ...one('w', 'partNumber', 'PN-9'), was: 'PN-2' })).toBe('correction-of-nothing');
    expect(wrong(one('t', 'partNumber', 'PN-9'))).toBe('correction-of-nothing');
    expect(wrong(one('w', 'unit', '2'))).toBe('correction-of-nothing');
  });

  it('is refused where it would read as before', () => {
    const same = one('w', 'partNumber', 'PN-1', 0);
    expect(refusalOf(() => correct(tested, same, given)).code).toBe('correction-changes-nothing');
  });

  it('is corrected by one who may do it, and by nobody else', () => {
    const by = signed('tech', at, { scope: { privileges: ['write-up', 'release'] } });
    const command = { ...one('w', 'partNumber', 'PN-9'), by };
    expect(refusalOf(() => correct(tested, command, given)).code).toBe('authorisation-does-not-cover');
    const releaser = { ...command, by: signed('tech', at, { scope: { privileges: ['sign-procedure'] } }) };
    expect(correct(tested, releaser, given)).toHaveLength(1);
  });

  it('asks for no second person, and takes none', () => {
    const command = one('w', 'partNumber', 'PN-9');
    expect(refusalOf(() => askCorrection(tested, command, given)).code).toBe('second-look-not-asked');
    const looked = { ...command, secondLook: second };
    expect(refusalOf(() => correct(tested, looked, given)).code).toBe('second-look-not-asked');
  });

  it('is corrected after the release, too', () => {
    const ready = goneOver(tested, tech, at);
    const closed = proceed(ready, release(ready, { id: 'r', by: tech, outcome: 'closed' }, given));
    const corrected = proceed(
      closed,
      correct(closed, asked(closed, { act: 'w', field: 'partNumber', now: 'PN-9' }), given),
    );
    expect(corrected.closed).toEqual(closed.closed);
    const [work] = corrected.acts.filter(({ id }) => id === 'w');
    expect(work && asCorrected(work, corrected.acts)).toMatchObject({ parts: [{ partNumber: 'PN-9' }, {}] });
  });
});

describe('when it was found', () => {
  const command = {
    id: 'c',
    by: tech,
    act: 'D1-written-up',
    field: 'whenFound' as const,
    was: null,
    reason: 'misread',
  };

  it('is corrected with the write-up, to one of the three', () => {
    const right = proceed(deferred, correct(deferred, { ...command, now: 'after-take-off' }, given));
    expect(right.whenFound).toBe('after-take-off');
    expect(right.limits).toEqual(deferred.limits);
    expect(refusalOf(() => correct(deferred, { ...command, now: 'at night' }, given)).code).toBe(
      'correction-not-one-of',
    );
    expect(refusalOf(() => correct(deferred, { ...command, now: 'constructor' }, given)).code).toBe(
      'correction-not-one-of',
    );
  });
});

describe('the document of an authority', () => {
  it('gets its number and its authority right, and keeps what it allows', () => {
    const grant = {
      id: 'g',
      by: tech,
      document: { kind: 'permit' as const, number: 'PF-12', authority: 'Authority' },
      limit: 'one flight',
      conditions: [],
      from: at,
      until: '2026-02-01T00:00Z',
      flights: 1,
      kindsOfFlight: null,
    };
    const life = proceed(deferred, enterGrant(deferred, grant, given));
    const right = proceed(life, correct(life, asked(life, { act: 'g', field: 'number', now: 'PF-21' }), given));
    expect(right.grants).toEqual([{ ...life.grants[0], document: { ...grant.document, number: 'PF-21' } }]);
  });
});

describe('what no correction touches', () => {
  it('is refused with what to do instead, of every kind of act that carries it', () => {
    const acts: Act[] = [...tested.acts];
    const refused = acts.flatMap((act) =>
      putRightOtherwise(act).map(({ field, instead }) => ({ refusal: notByCorrection('D1', act, field), instead })),
    );
    expect(refused.length).toBeGreaterThan(8);
    for (const { refusal, instead } of refused)
      expect([refusal.code, refusal.next]).toEqual(['not-by-correction', instead]);
  });

  it('is called nothing to correct where the act has no such thing', () => {
    const [written] = tested.acts;
    expect(notByCorrection('D1', written, 'measured').code).toBe('correction-of-nothing');
    expect(notByCorrection('D1', undefined, 'row').code).toBe('correction-of-nothing');
    expect(notByCorrection('D1', written, 'measured').message).toBe(
      `There is nothing to correct in the write-up, entered ${written?.enteredAt} for defect D1: a value measured does not stand there.`,
    );
    expect(notByCorrection('D1', undefined, 'row').message).toContain(
      'where no such entry is: the row does not stand',
    );
  });

  it('has no name in common with what a correction puts right', () => {
    const never = new Set<string>(NEVER_CORRECTED);
    const names = tested.acts.flatMap((act) => detailsOf(act).map(({ field }) => field));
    expect(names.filter((name) => never.has(name))).toEqual([]);
  });
});

it('a reason why a write-up was joined to another is put right on the closed one', () => {
  const seen = identifiedAs(writtenUp(at, { defect: 'D2' }));
  const joining = { id: 'j', entryId: 'e', by: tech, sheet: 'S2', reason: 'same unti' };
  const { joins } = join(seen, deferred, joining, given);
  const closed = proceed(seen, joins);
  const right = proceed(
    closed,
    correct(closed, asked(closed, { act: 'j', field: 'reason', now: 'same unit' }), given),
  );
  expect(readsNow(right, { act: 'j', field: 'reason', item: null })).toBe('same unit');
});
