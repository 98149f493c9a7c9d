/** The four times in minutes, null where not known. After a return to the ramp on-block is that return. */
export interface LegTimes {
  offBlock: number | null;
  airborne: number | null;
  touchDown: number | null;
  onBlock: number | null;
}

export type LegTime = 'off-block' | 'airborne' | 'touch-down' | 'on-block';

/**
 * Times taken from several messages may contradict each other. Take-off and touch-down are firm (the air/ground switch),
 * block times are not (a brake), so the block time goes; a landing before its take-off loses both its times.
 */
export function inOrder(times: LegTimes): { times: LegTimes; broken: boolean } {
  const offBlock = isAfter(times.offBlock, times.airborne) ? null : times.offBlock;
  const onBlock = isAfter(times.touchDown, times.onBlock) ? null : times.onBlock;
  const ordered = { ...times, offBlock, onBlock };
  if (isAfter(ordered.airborne ?? offBlock, ordered.touchDown ?? onBlock)) {
    return { times: { ...ordered, touchDown: null, onBlock: null }, broken: true };
  }
  return { times: ordered, broken: offBlock !== times.offBlock || onBlock !== times.onBlock };
}

export function missingTimes({ offBlock, airborne, touchDown, onBlock }: LegTimes, onRamp: boolean): LegTime[] {
  const missing: LegTime[] = [];
  if (offBlock === null) missing.push('off-block');
  if (airborne === null && !onRamp) missing.push('airborne');
  if (touchDown === null && !onRamp) missing.push('touch-down');
  if (onBlock === null) missing.push('on-block');
  return missing;
}

/** Minutes from one time to another, 0 when either is not known. */
export function minutesBetween(from: number | null, to: number | null): number {
  return from === null || to === null ? 0 : to - from;
}

function isAfter(one: number | null, other: number | null): boolean {
  return one !== null && other !== null && one > other;
}
