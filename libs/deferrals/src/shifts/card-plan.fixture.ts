/** Random work cards: blocks of steps that a real card is made of, in any number and order, some of them free of the others. */
import type { Card, CardAccount, CardStep, Need } from '#mel';

/** One block of a card: what is done together on an aircraft. */
export interface Block {
  kind: 'breaker' | 'latches' | 'tool' | 'wait' | 'level' | 'seals' | 'run' | 'pin-stays' | 'wipe';
  /** Its steps may be begun before what stands above them. */
  free: boolean;
  /** It needs a second person: anybody authorised, or one with a licence of category B1. */
  two: 'no' | 'anybody' | 'B1';
  /** It uses a gauge that is calibrated. */
  gauge: boolean;
}

export const BLOCKS: Block['kind'][] = [
  'breaker',
  'latches',
  'tool',
  'wait',
  'level',
  'seals',
  'run',
  'pin-stays',
  'wipe',
];

export const LATCHES = 4;
export const SEALS = 2;
export const MINUTES = 5;

/** Steps between those that count out and in go to the front, those that count in to the end, last out first in. */
export function cardOf(id: string, wanted: readonly Block[]): Card {
  const once = wanted.filter(({ kind }, at) => wanted.findIndex((one) => one.kind === kind) === at);
  const fronts = once.flatMap((block) => frontOf(block));
  const ends = once.toReversed().flatMap((block) => endOf(block, fronts));
  const accounts = once.flatMap((block) => accountOf(block));
  const look: CardStep = { id: 'look', kind: 'inspect', text: 'A second look.', of: fronts.map((step) => step.id) };
  return {
    id,
    title: `Card ${id}`,
    purpose: 'rectification',
    reference: { manual: 'INV-AMM', task: id, revision: '1', issuedOn: '2026-01-01' },
    ...(accounts.length === 0 ? {} : { accounts }),
    steps: [...fronts, { ...look, after: fronts.map((step) => step.id) }, ...ends],
  };
}

function accountOf({ kind }: Block): CardAccount[] {
  const at = { what: kind, where: `bay of ${kind}`, undo: 'put it back', numbered: true };
  if (kind === 'breaker') return [{ ...at, id: kind, pair: 'pull-reset', kind: 'breaker' }];
  if (kind === 'tool') return [{ ...at, id: kind, pair: 'issue-return', kind: 'tool' }];
  if (kind === 'pin-stays') return [{ ...at, id: kind, pair: 'fit-remove', kind: 'lock-pin', over: 'stays' }];
  if (kind !== 'latches') return [];
  return [{ id: kind, pair: 'unlatch-latch', what: kind, where: at.where, count: LATCHES }];
}

function needsOf({ two, gauge }: Block): Need[] {
  const second: Need = { kind: 'second-person', what: 'somebody at the switch' };
  return [
    ...(two === 'no' ? [] : [two === 'B1' ? { ...second, licence: ['B1' as const] } : second]),
    ...(gauge ? [{ kind: 'equipment' as const, what: 'gauge', calibrated: true }] : []),
  ];
}

function frontOf(block: Block): CardStep[] {
  const { kind, free } = block;
  const needs = needsOf(block);
  const step = {
    id: kind,
    text: `Do ${kind}.`,
    ...(needs.length > 0 ? { needs } : {}),
    ...(free ? { after: [] } : {}),
  };
  switch (kind) {
    case 'breaker':
    case 'latches':
    case 'pin-stays':
      return [{ ...step, kind: 'out', account: kind }];
    case 'tool':
      return [
        { id: kind, kind: 'out', text: 'Take the wrench.', account: kind, ...(free ? { after: [] } : {}) },
        {
          id: 'use',
          kind: 'do',
          text: 'Use it.',
          needs: [...needs, { kind: 'tool', what: 'wrench', account: kind }],
        },
      ];
    case 'wait':
      return [{ ...step, kind: 'wait', lasts: { minutes: MINUTES } }];
    case 'level':
      return [{ ...step, kind: 'measure', measure: { id: 'l', what: 'level', unit: 'l', from: 3, to: 4 } }];
    case 'seals':
      return [{ ...step, kind: 'renew', part: 'seal', count: SEALS, licence: ['B1'] }];
    case 'run':
      return [
        {
          ...step,
          kind: 'run',
          lasts: { minutes: MINUTES },
          readings: [{ id: 'case', what: 'case', unit: 'C', to: 90 }],
          look: 'Dry.',
        },
      ];
    case 'wipe':
      return [{ ...step, kind: 'do' }];
  }
}

function endOf({ kind }: Block, fronts: readonly CardStep[]): CardStep[] {
  if (kind !== 'breaker' && kind !== 'latches' && kind !== 'tool') return [];
  const after = kind === 'tool' ? ['use'] : [kind];
  if (fronts.some((step) => step.id === 'run')) after.push('run');
  return [{ id: `${kind}-in`, kind: 'in', text: `${kind} back.`, account: kind, after }];
}
