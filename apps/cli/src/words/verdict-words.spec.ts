import { expect, it } from 'vitest';
import type { PlannedFlight, Situation, Verdict } from '#dispatch';
import { verdictWords } from './verdict-words.js';

const flight: PlannedFlight = {
  id: 'f1',
  number: 'ZZ210',
  from: 'Northmere',
  to: 'Saltby',
  offBlockAt: '2026-03-10T09:00+01:00',
};

const verdict: Verdict = {
  verdict: 'not-settled',
  words: 'not settled',
  onlyUnder: [],
  lo: 'may-not-fly',
  hi: 'after-work',
  reason: null,
  at: '2026-03-10T06:00:30Z',
  aircraft: 'Q-ABC',
  flight: 'f1',
  mel: { document: 'Invented MEL', revision: '7' },
  items: [
    {
      entry: '32-42-01',
      title: 'Main wheel brake',
      unit: '2',
      perhaps: true,
      cause: { kind: 'failed', defect: 'd1' },
      row: '1',
      now: 'F',
      after: 'U',
      conditions: [
        { kind: 'number-required', id: 'n', text: '3 of 4 required', because: '3 operative.', now: 'T', after: 'T' },
        { kind: 'proviso', id: 'a', text: 'The runway is wide.', because: 'not known', now: 'U', after: 'U' },
        { kind: 'procedure', id: 'M1', text: '(M) Deactivate it.', because: 'not done', now: 'F', after: 'T' },
        { kind: 'directive', id: 'ad', text: 'No directive bars it.', because: 'AD 1 does', now: 'F', after: 'F' },
      ],
    },
    {
      entry: '32-42-04',
      title: 'Auto-brake',
      unit: '1',
      perhaps: false,
      cause: { kind: 'considered-inoperative', by: { entry: '32-42-01', unit: '2', row: '1' } },
      row: null,
      now: 'T',
      after: 'T',
      conditions: [],
    },
  ],
  gates: [],
  reasons: ['The runway is not known.', 'The brake is not deactivated.'],
  refusedRows: [{ entry: '32-42-01', unit: '2', row: '2', because: ['both brakes are down', 'no relief'] }],
  work: [
    {
      work: '32-42-01/1/M1',
      text: 'Deactivate it.',
      minutes: 95,
      by: 'technician',
      needsPersonAtStation: true,
      defect: 'd1',
      step: 1,
      needs: [],
      startsAfter: 0,
      endsAfter: 95,
    },
    {
      work: '32-42-01/1/O1',
      text: 'Brief the crew',
      minutes: null,
      by: 'commander',
      needsPersonAtStation: false,
      step: 2,
      needs: [1],
      startsAfter: 95,
      endsAfter: null,
    },
  ],
  workMinutes: null,
  earliestOffBlockAt: '2026-03-10T08:00:00Z',
  lateMinutes: 0,
  questions: [
    {
      fact: 'flight.runwayWidthMetres',
      question: 'How wide is it?',
      mayAnswer: ['dispatcher', 'maintenance-control'],
      neededBy: ['32-42-01/1/a'],
    },
  ],
  validUntil: { at: '2026-03-12T00:00:00Z', because: 'the interval ends.' },
  notLookedAt: ['fuel'],
  evaluator: 'json-rules-engine',
};

const situation = (of: PlannedFlight | null) => ({ flight: of }) as Situation;

it('a verdict reads from the answer and its reasons down to what it leaves out', () => {
  expect(verdictWords(verdict, situation(flight), { notice: 'Invented. Never for flight.' }).split('\n')).toEqual([
    'NOT SETTLED: Q-ABC, flight ZZ210 Northmere to Saltby, off blocks 10 Mar 2026 08:00 UTC, as things stood 10 Mar 2026 06:00:30 UTC.',
    '',
    'Why',
    '  - The runway is not known.',
    '  - The brake is not deactivated.',
    '',
    'Work to do',
    '  1. Deactivate it (d1): 1 h 35 min, by technician, needs somebody at the station',
    '  2. Brief the crew: no time given, by commander, after 1',
    '  all of it, one thing after another: time not known; earliest off blocks 10 Mar 2026 08:00 UTC',
    '',
    'Questions',
    '  - How wide is it? (ask dispatcher or maintenance control; for 32-42-01/1/a)',
    '',
    'Rows',
    '  32-42-01 Main wheel brake 2, row 1 (d1, if it is this one): not settled',
    '    holds: 3 of 4 required - 3 operative',
    '    not settled: The runway is wide',
    '    holds after work: (M) Deactivate it',
    '    does not hold: No directive bars it',
    '  32-42-04 Auto-brake 1, no row (considered inoperative by 32-42-01, row 1): holds',
    '',
    'Rows that cannot be used',
    '  - 32-42-01 Main wheel brake 2, row 2: both brakes are down; no relief',
    '',
    'Not looked at',
    '  - fuel',
    '',
    'Valid until 12 Mar 2026 00:00 UTC (the interval ends), or until anything above changes before.',
    'MEL: Invented MEL, revision 7. Invented. Never for flight.',
    'This supports, and never replaces, the approved MEL, the maintenance manual, the commander and licensed certifying staff; local regulation prevails.',
  ]);
});

it('a verdict with nothing open is short, and still says what it leaves out', () => {
  const empty: Verdict = {
    ...verdict,
    verdict: 'nothing-open',
    words: 'nothing open',
    items: [],
    work: [],
    questions: [],
    refusedRows: [],
    reasons: ['No defect is open.'],
    validUntil: null,
    mel: null,
  };
  expect(verdictWords(empty, situation(null)).split('\n')).toEqual([
    'NOTHING OPEN: Q-ABC, no flight, as things stood 10 Mar 2026 06:00:30 UTC.',
    '',
    'Why',
    '  - No defect is open.',
    '',
    'Not looked at',
    '  - fuel',
    '',
    'Valid until anything above changes.',
    'MEL: none.',
    expect.stringContaining('supports, and never replaces'),
  ]);
});
