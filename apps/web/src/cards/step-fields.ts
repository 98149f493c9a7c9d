import type { Schemas } from '../api/client.js';
import type { Step } from './step-props.js';

export type Typed = Record<string, string>;

const CERTIFIED_BATCH = 'Batch or serial number';

interface Asked {
  key: string;
  label: string;
  hint?: string;
  decimal: boolean;
}

/** What is typed for a step as it stands. */
export function fieldsOf(step: Step): Asked[] {
  const reading = ({ id, what, unit, limits }: Schemas['CardStep']['readings'][number]): Asked => ({
    key: id,
    label: `${what}, ${unit}`,
    hint: `The card allows ${limits}.`,
    decimal: true,
  });
  const { account, renew } = step;
  if (step.kind === 'measure' && step.measure) return [reading(step.measure)];
  if (step.kind === 'renew') {
    return [
      { key: 'partNumber', label: `Part number of the new ${renew?.part}`, decimal: false },
      {
        key: 'batch',
        label: renew?.certified ? CERTIFIED_BATCH : 'Batch, serial or certificate number',
        decimal: false,
      },
      ...(renew?.certified
        ? [{ key: 'certificate', label: 'Number of its release certificate', decimal: false }]
        : []),
      ...(renew && renew.count > 1
        ? [{ key: 'count', label: `How many renewed, of ${renew.count}`, decimal: true }]
        : []),
    ];
  }
  if (account) {
    const word = step.kind === 'out' ? account.outWord : account.inWord;
    const count = { key: 'count', label: `How many ${word}, of ${account.count}`, decimal: true };
    const number = { key: 'number', label: `Number read on the ${account.what}`, decimal: false };
    return [...(account.count > 1 ? [count] : []), ...(account.numbered ? [number] : [])];
  }
  if (step.state === 'next' && step.shownBy !== null) {
    return [{ key: 'minutes', label: 'Minutes', hint: `Read from ${step.shownBy}, never guessed.`, decimal: true }];
  }
  if (step.kind === 'run' && step.state === 'begun') return step.readings.map(reading);
  if (step.state === 'ran') return [{ key: 'findings', label: step.look ?? 'What you found', decimal: false }];
  return [];
}

/** What was typed, as it is sent. */
export function resultOf(step: Step, typed: Typed): object {
  const { kind, state } = step;
  const count = typed['count'] === undefined ? {} : { count: numberIn(typed['count']) };
  if (kind === 'measure') {
    const { id = '', unit } = step.measure ?? {};
    return { result: 'measured', value: numberIn(typed[id]), unit };
  }
  if (kind === 'renew') {
    const { partNumber, batch, certificate } = typed;
    return { result: 'renewed', partNumber, batch, ...(certificate === undefined ? {} : { certificate }), ...count };
  }
  if (kind === 'out' || kind === 'in') {
    return { result: kind, ...count, ...(typed['number'] === undefined ? {} : { number: typed['number'] }) };
  }
  if (state === 'ran') return { result: 'looked', findings: typed['findings'] };
  if (kind === 'wait' || kind === 'run') {
    if (state === 'next')
      return { result: 'begun', ...(typed['minutes'] ? { minutes: numberIn(typed['minutes']) } : {}) };
    if (kind === 'wait') return { result: 'waited' };
    const readings = step.readings.map(({ id, unit }) => ({ id, unit, value: numberIn(typed[id]) }));
    return { result: 'ran', readings };
  }
  return { result: 'done' };
}

const numberIn = (text: string | undefined): number => Number((text ?? '').replace(',', '.'));

/** What the button says that is done. */
export function pressed({ kind, state, account }: Step): string {
  if (kind === 'out') return `It is ${account?.outWord}`;
  if (kind === 'in') return `It is ${account?.inWord}`;
  if (state === 'ran') return 'Looked';
  if (kind === 'wait' || kind === 'run')
    return state === 'next' ? 'Begin: the time counts from now' : 'The time is over';
  return kind === 'measure' ? 'Read' : kind === 'renew' ? 'Renewed' : 'Done';
}
