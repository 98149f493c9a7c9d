import type { StepAsked } from '#deferrals';
import type * as Bodies from './bodies.js';

/** What is not given is empty, and the rule that misses it says what it asks for. */
export function askedOf(body: Bodies.StepBody): StepAsked {
  const { result, count = 1 } = body;
  const certificate = body.certificate === undefined ? {} : { certificate: body.certificate };
  const number = body.number === undefined ? {} : { number: body.number };
  switch (result) {
    case 'done':
    case 'waited':
      return { kind: result };
    case 'measured':
      return { kind: result, value: body.value ?? Number.NaN, unit: body.unit ?? '' };
    case 'renewed':
      return { kind: result, partNumber: body.partNumber ?? '', batch: body.batch ?? '', count, ...certificate };
    case 'begun':
      return { kind: result, ...(body.minutes === undefined ? {} : { minutes: body.minutes }) };
    case 'ran':
      return { kind: result, readings: (body.readings ?? []).map(({ id, value, unit }) => ({ id, value, unit })) };
    case 'looked':
      return { kind: result, findings: body.findings ?? '' };
    case 'out':
    case 'in':
      return { kind: result, count, ...number };
  }
}
