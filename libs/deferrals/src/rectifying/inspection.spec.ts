import { describe, expect, it } from 'vitest';
import type { LeftItem } from '../acts.js';
import type { DeferralSettings } from '../context.js';
import { context, deferredAs, goneOver, refusalOf, signed } from '../invented.fixture.js';
import { leaveOnAircraft } from '../leaving/leave.js';
import { undoLeft } from '../leaving/undo.js';
import { proceed } from '../replay.js';
import { inspect } from './inspect.js';
import { rectify } from './rectify.js';
import { release } from './release.js';
import { verifyGenerally } from './verify-generally.js';

const at = '2026-01-27T10:00Z';
const by = signed('tech', at);
const life = deferredAs({}, '2026-01-26T10:00Z');
const work = { id: 'w', by, workDone: 'servo replaced', reference: 'AMM 22-10', complete: true };
const under = (settings: Partial<DeferralSettings>) => context(at, { settings });
const worked = (settings: Partial<DeferralSettings> = {}) => proceed(life, rectify(life, work, under(settings)));

describe('the independent inspection that the operator lists', () => {
  it.each(['22', '22-10-01'])('is asked for by the line %s, though nobody ticked it', (line) => {
    const settings = { inspectionList: ['32', line] };
    const asked = worked(settings);
    expect(asked.work?.done.at(-1)?.inspectionAsked).toBe(true);
    const out = () => release(goneOver(asked, by, at), { id: 'r', by, outcome: 'closed' }, under(settings));
    expect(refusalOf(out, 'inspection-on-the-list').facts).toMatchObject({ line });
  });

  it('is asked for at the release too, when the list grew after the work', () => {
    const out = (inspectionList: string[]) =>
      release(goneOver(worked(), by, at), { id: 'r', by, outcome: 'closed' }, under({ inspectionList }));
    expect(refusalOf(() => out(['22'])).code).toBe('inspection-on-the-list');
    expect(out(['32', '22-10-02'])).toHaveLength(1);
  });
});

describe('inspecting own work', () => {
  const own = (ownInspection: DeferralSettings['ownInspection'], unforeseen?: string) =>
    inspect(
      worked(),
      { id: 'i', by, findings: 'no findings', ...(unforeseen === undefined ? {} : { unforeseen }) },
      under({ ownInspection }),
    );

  it('is refused without a reason, whatever the rules', () => {
    expect(refusalOf(() => own('when-unforeseen')).code).toBe('same-person-inspecting');
    expect(refusalOf(() => own('when-unforeseen', ' ')).code).toBe('text-missing');
  });

  it('is recorded as the unforeseen case it is where the rules know one (EU), and never elsewhere (FAA)', () => {
    expect(own('when-unforeseen', 'nobody else within 600 km')).toMatchObject([
      { unforeseen: 'nobody else within 600 km' },
    ]);
    expect(refusalOf(() => own('never', 'nobody else within 600 km')).code).toBe('own-inspection-never');
  });

  it('is no unforeseen case when another person inspects', () => {
    const said = { id: 'i', by: signed('second', at), findings: 'none', unforeseen: 'ticked by mistake' };
    expect(inspect(worked(), said, under({}))[0]).not.toHaveProperty('unforeseen');
  });
});

describe('going over the aircraft after the work', () => {
  const given = context(at);
  const all = { toolsAccounted: true, panelsClosed: true, registerChecked: true };
  const verify = (over: object = {}, one = worked()) => verifyGenerally(one, { id: 'v', by, ...all, ...over }, given);

  it('is all of it or nothing, and the refusal names what is missing', () => {
    const refusal = refusalOf(() => verify({ toolsAccounted: false, panelsClosed: false }), 'not-generally-verified');
    expect(refusal.facts['missing']).toEqual(['tools accounted for', 'panels and cowls closed']);
    expect(refusalOf(() => verify({ registerChecked: false })).message).toContain('the register checked');
    expect(refusalOf(() => verify({}, life)).code).toBe('no-open-work');
  });

  it('is refused while a tool issued for it is not returned', () => {
    const tool: LeftItem = { id: 't', kind: 'tool', where: 'bay', tag: 'T-12', undo: 'return it' };
    const open = worked();
    const out = proceed(open, leaveOnAircraft(open, { id: 'l', by, items: [tool] }, given));
    expect(refusalOf(() => verify({}, out), 'tools-not-returned').message).toContain('tool at bay (T-12)');
  });

  it('counts until anything is touched again', () => {
    const pin: LeftItem = { id: 'p', kind: 'lock-pin', where: 'gear 2', tag: '7', undo: 'pull out' };
    const open = worked();
    const pinned = proceed(open, leaveOnAircraft(open, { id: 'l', by, items: [pin] }, given));
    const verified = (one: typeof open) => one.work?.verified !== null;
    const seen = proceed(pinned, verify({}, pinned));
    expect(verified(seen)).toBe(true);
    expect(verified(proceed(seen, undoLeft(seen, { id: 'u', by, items: ['p'] }, given)))).toBe(false);
    expect(verified(proceed(seen, rectify(seen, { ...work, id: 'w2' }, given)))).toBe(false);
    const more = leaveOnAircraft(seen, { id: 'l2', by, items: [{ ...pin, id: 'q', where: 'gear 3' }] }, given);
    expect(verified(proceed(seen, more))).toBe(false);
  });
});
