import type { StatefulAuthorizationCall } from '@cedar-policy/cedar-wasm/nodejs';
import type { Condition } from '#mel';

type Facts = Record<string, string | number | boolean>;

export function nameOf(key: string): string;
export function toJsonLogic(condition: Condition): object;
export function toCedar(condition: Condition): string;
export function namedFacts(facts: Facts): Facts;
export function cedarCall(policySet: string, context: Facts): StatefulAuthorizationCall;
