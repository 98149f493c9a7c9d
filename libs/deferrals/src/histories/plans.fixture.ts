/** The acts of a random history: what the model has against each, how it is asked for, and what changes in the model. */
import { findNoFault } from '../answering/find-no-fault.js';
import { raiseInError } from '../answering/raise-in-error.js';
import { correct } from '../correcting/correct.js';
import { changeRow } from '../deferring/change-row.js';
import { defer } from '../deferring/defer.js';
import { transfer } from '../deferring/transfer.js';
import { extendInterval } from '../extending/extend.js';
import { actor, AIRCRAFT } from '../invented.fixture.js';
import { leaveOnAircraft } from '../leaving/leave.js';
import { undoLeft } from '../leaving/undo.js';
import { inspect } from '../rectifying/inspect.js';
import { recordTest } from '../rectifying/record-test.js';
import { rectify } from '../rectifying/rectify.js';
import { release } from '../rectifying/release.js';
import { restore } from '../rectifying/restore.js';
import { verifyGenerally } from '../rectifying/verify-generally.js';
import { handOver } from '../writing-up/hand-over.js';
import { reEnter } from '../writing-up/re-enter.js';
import { writeUp } from '../writing-up/write-up.js';
import { breaker, given, iso, sign } from './aircraft.fixture.js';
import * as m from './model.fixture.js';
import type { ModelDefect, RowName, Who } from './model.fixture.js';
import type { Plan } from './trying.fixture.js';

export const writeAgain: Plan = (model, real, { closed }, index) => ({
  against: ['already-written-up', ...(closed ? (['already-closed'] as const) : [])],
  act: (life) => {
    const said = {
      id: real.id(),
      defect: life.defect,
      by: actor('crew'),
      aircraft: AIRCRAFT,
      origin: 'crew' as const,
    };
    return writeUp(life, { ...said, description: 'again' }, given(model, real, index));
  },
  then: () => {},
});

export const deferBy =
  (row: RowName | null, who: Who): Plan =>
  (model, real, defect, index) => ({
    against: [...m.againstSigner(model, who), ...m.againstDeferring(model, defect, row)],
    act: (life) => {
      const basis = row === null ? null : ({ kind: 'mel-row', row } as const);
      return defer(life, { id: real.id(), by: sign(who, model.minute), basis }, given(model, real, index, row));
    },
    then: () => {
      if (row === null) return;
      defect.limits = [m.limitOf(model, defect, row)];
      defect.row = row;
      defect.usedA = m.ROWS[row].category === 'A';
    },
  });

export const change =
  (row: RowName, who: Who, causePick: number | null): Plan =>
  (model, real, defect, index) => {
    const causeIndex = causePick === null ? null : causePick % model.defects.length;
    const cause = causeIndex === null ? null : (model.defects[causeIndex] ?? null);
    return {
      against: [...m.againstSigner(model, who), ...m.againstChanging(model, defect, row, who, cause)],
      act: (life) => {
        const said = {
          id: real.id(),
          by: sign(who, model.minute),
          basis: { kind: 'mel-row', row },
          reason: 'x',
        } as const;
        const command = { ...said, ...(causeIndex === null ? {} : { causeClosed: `D${causeIndex}` }) };
        return changeRow(life, command, given(model, real, index, row));
      },
      then: () => {
        defect.limits = m.limitsAfterChange(model, defect, row, cause !== null);
        defect.row = row;
        defect.usedA ||= m.ROWS[row].category === 'A';
      },
    };
  };

export const extendBy =
  (asks: Who, grants: Who, outside: boolean): Plan =>
  (model, real, defect, index) => ({
    against: [...m.againstSigner(model, grants), ...m.againstExtending(model, defect, asks, grants, outside)],
    act: (life) => {
      const words = { reason: 'no part', whyNotFixed: 'no part', plan: 'part on its way' };
      const asked = { by: actor(asks), requestedAt: iso(model.minute), outsideOperatorsControl: outside, ...words };
      const command = { id: real.id(), by: sign(grants, model.minute), request: asked };
      return extendInterval(life, command, given(model, real, index));
    },
    then: () => {
      const more = (lastDay: number | null, row: RowName) =>
        lastDay === null ? null : lastDay + (m.ROWS[row].days ?? 0);
      defect.limits = defect.limits.map((limit) => ({ ...limit, lastDay: more(limit.lastDay, limit.row) }));
      defect.extended = true;
    },
  });

export const leave =
  (who: Who): Plan =>
  (model, real, defect, index) => {
    const id = real.id();
    return {
      against: m.againstSigner(model, who),
      act: (life) =>
        leaveOnAircraft(
          life,
          { id: real.id(), by: sign(who, model.minute), items: [breaker(id)] },
          given(model, real, index),
        ),
      then: () => {
        defect.left.push(id);
        defect.altered = true;
        if (defect.work !== null) Object.assign(defect.work, { restored: false, goneOver: false });
      },
    };
  };

export const undo =
  (who: Who): Plan =>
  (model, real, defect, index) => ({
    against: [...m.againstSigner(model, who), ...(defect.left.length === 0 ? (['left-item-unknown'] as const) : [])],
    act: (life) => {
      const items = [defect.left[0] ?? 'nothing'];
      return undoLeft(life, { id: real.id(), by: sign(who, model.minute), items }, given(model, real, index));
    },
    then: () => {
      defect.left.shift();
      if (defect.work !== null) defect.work.goneOver = false;
    },
  });

export const work =
  (who: Who, complete: boolean, testAsked: boolean, inspectionAsked: boolean): Plan =>
  (model, real, defect, index) => ({
    against: m.againstSigner(model, who),
    act: (life) => {
      const said = { workDone: 'replaced', reference: 'AMM 22', complete, testAsked, inspectionAsked };
      return rectify(life, { id: real.id(), by: sign(who, model.minute), ...said }, given(model, real, index));
    },
    then: () => {
      defect.work = {
        complete,
        performers: new Set([...(defect.work?.performers ?? []), who]),
        testAsked: testAsked || (defect.work?.testAsked ?? false),
        tested: null,
        inspectionAsked: inspectionAsked || (defect.work?.inspectionAsked ?? false),
        inspected: false,
        restored: false,
        goneOver: false,
      };
    },
  });

export type Look = 'test' | 'bad test' | 'inspect' | 'restore' | 'go over';
export const look =
  (what: Look, who: Who): Plan =>
  (model, real, { work: open, left }, index) => ({
    against: [
      ...m.againstSigner(model, who),
      ...(open === null ? (['no-open-work'] as const) : []),
      ...(what === 'inspect' && open?.performers.has(who) === true ? (['same-person-inspecting'] as const) : []),
      ...(what === 'restore' && left.length > 0 ? (['still-left-on-the-aircraft'] as const) : []),
    ],
    act: (life) => {
      const said = { id: real.id(), by: sign(who, model.minute) };
      const now = given(model, real, index);
      const all = { toolsAccounted: true, panelsClosed: true, registerChecked: true };
      if (what === 'go over') return verifyGenerally(life, { ...said, ...all }, now);
      if (what === 'inspect') return inspect(life, { ...said, findings: 'none' }, now);
      if (what === 'restore') return restore(life, { ...said, reference: 'AMM 22' }, now);
      return recordTest(life, { ...said, test: 'AP test', result: what === 'test' ? 'good' : 'not-good' }, now);
    },
    then: () => {
      if (open === null) return;
      if (what === 'inspect') open.inspected = true;
      else if (what === 'restore') open.restored = true;
      else if (what === 'go over') open.goneOver = true;
      else open.tested = what === 'test';
    },
  });

export const out =
  (who: Who, closes: boolean): Plan =>
  (model, real, defect, index) => ({
    against: [...m.againstSigner(model, who), ...m.againstReleasing(defect, who, closes)],
    act: (life) => {
      const said = closes
        ? { outcome: 'closed' as const }
        : { outcome: 'stays-open' as const, staysOpen: ['the rest'] };
      return release(life, { id: real.id(), by: sign(who, model.minute), ...said }, given(model, real, index));
    },
    then: () => {
      defect.work = null;
      defect.closed = closes;
    },
  });

export const answer =
  (error: boolean, who: Who): Plan =>
  (model, real, defect, index) => ({
    against: [...m.againstSigner(model, who), ...m.againstAnswering(defect)],
    act: (life) => {
      const said = { id: real.id(), by: sign(who, model.minute) };
      const now = given(model, real, index);
      if (error) return raiseInError(life, { ...said, reason: 'wrong aircraft' }, now);
      return findNoFault(life, { ...said, checks: 'AP test', reference: 'AMM 22' }, now);
    },
    then: () => {
      defect.closed = true;
    },
  });

const otherUnit = ({ unit }: ModelDefect): ModelDefect['unit'] => (unit === '1' ? '2' : '1');

export const carry =
  (how: 're-enter' | 'hand over' | 'swap'): Plan =>
  (model, real, defect, index) => ({
    against: how === 'swap' && m.deferredElsewhere(model, defect, otherUnit(defect)) ? ['unit-deferred-already'] : [],
    act: (life) => {
      const id = real.id();
      const now = given(model, real, index);
      const toUnit = otherUnit(defect);
      if (how === 're-enter') return reEnter(life, { id, by: actor('crew'), sheet: id, reason: 'new book' }, now);
      if (how === 'hand over') return handOver(life, { id, by: actor('crew'), to: 'night shift', note: '' }, now);
      const parts = { fromUnit: defect.unit, toUnit, parts: [], reason: 'x', installed: ['1', '2'] };
      const moved = life.left.map(({ id: item, where }) => ({ item, where }));
      const others = real.lives.filter((_, other) => other !== index);
      return transfer(life, { id, by: sign('first', model.minute), ...parts, moved, others }, now);
    },
    then: () => {
      if (how === 'swap') defect.unit = otherUnit(defect);
    },
  });

export const correctTime =
  (minutes: number, who: Who): Plan =>
  (model, real, defect, index) => ({
    against: [
      ...m.againstSigner(model, who),
      ...(minutes > 0 ? (['correction-moves-the-day'] as const) : []),
      ...(minutes === 0 ? (['correction-changes-nothing'] as const) : []),
    ],
    act: (life) => {
      const act = life.acts[0]?.id ?? '';
      const said = { act, field: 'recordedAt' as const, was: life.recordedAt, now: iso(defect.recorded + minutes) };
      const command = { id: real.id(), by: sign(who, model.minute), ...said, reason: 'misread' };
      return correct(life, command, given(model, real, index));
    },
    then: () => {
      defect.recorded += minutes;
      defect.limits = defect.limits.map((limit) =>
        limit.row === 'pair' ? limit : m.limitOf(model, defect, limit.row),
      );
    },
  });

/** What a helpful technician does next to bring a defect to its release. */
export const finish: Plan = (model, real, defect, index) => nextStep(defect)(model, real, defect, index);

function nextStep({ left, work: open, altered }: ModelDefect): Plan {
  if (left.length > 0) return undo('first');
  if (open === null || !open.complete) return work('first', true, open === null, true);
  if (open.tested === false || (open.testAsked && open.tested === null)) return look('test', 'first');
  if (open.inspectionAsked && !open.inspected)
    return look('inspect', open.performers.has('second') ? 'control' : 'second');
  if (altered && !open.restored) return look('restore', 'first');
  return open.goneOver ? out('second', true) : look('go over', 'first');
}
