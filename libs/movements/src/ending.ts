import { nameOf, type Attempt } from './attempts.js';
import type { LegTimes } from './leg-times.js';
import type { TrayEntry } from './message.js';
import type { DatedMessage } from './dated-message.js';
import { byWeight, type Landing, type RampReturn } from './statements.js';
import { trayEntryFor } from './tray.js';

/** How an attempt went, before any arrival elsewhere is looked at. */
export interface AttemptEnding {
  ending: 'returned' | 'ramp' | 'open';
  times: LegTimes;
  tray: TrayEntry[];
}

interface Claim {
  message: DatedMessage;
  flew: boolean;
}

/**
 * Whether the aircraft got away. A correction decides; otherwise, where one message says that it came back to the ramp
 * and another that it flew, it is counted as flown, which uses more of every limit, and a person is asked.
 */
export function endingOf(
  attempt: Attempt,
  returns: readonly Landing[],
  rampReturns: readonly RampReturn[],
): AttemptEnding {
  const { departures } = attempt;
  const claims: Claim[] = [
    ...departures.flatMap(({ message, airborne, rampReturn }): Claim[] =>
      airborne === null && rampReturn === null ? [] : [{ message, flew: airborne !== null }],
    ),
    ...returns.map(({ message }) => ({ message, flew: true })),
    ...rampReturns.map(({ message }) => ({ message, flew: false })),
  ].sort(byWeight);
  const [first] = claims;
  const disputed = claims.find(({ flew }) => flew !== first?.flew);
  const conflict = disputed && !first?.message.correction;
  const offBlock = firstKnown(departures.map((said) => said.offBlock));
  const tray = conflict ? [disputeOf(disputed.message)] : [];
  if (first && !first.flew && !conflict) {
    const back = [...departures.map(({ message, rampReturn }) => ({ message, end: rampReturn })), ...rampReturns];
    const onBlock = firstKnown(back.sort(byWeight).map(({ end }) => end));
    return { ending: 'ramp', times: { offBlock, airborne: null, touchDown: null, onBlock }, tray };
  }
  const airborne = firstKnown(departures.map((said) => said.airborne));
  return {
    ending: returns.length > 0 ? 'returned' : 'open',
    times: { offBlock, airborne, ...landingTimes(returns) },
    tray,
  };
}

/** Touch-down and on-block, each by the statement that counts first among those that have it. */
export function landingTimes(landings: readonly Landing[]): Pick<LegTimes, 'touchDown' | 'onBlock'> {
  const weighed = [...landings].sort(byWeight);
  return {
    touchDown: firstKnown(weighed.map(({ touchDown }) => touchDown)),
    onBlock: firstKnown(weighed.map(({ onBlock }) => onBlock)),
  };
}

function firstKnown(times: readonly (number | null)[]): number | null {
  return times.find((time) => time !== null) ?? null;
}

function disputeOf(message: DatedMessage): TrayEntry {
  const sentence = `${nameOf(message)} is reported both as flown and as back on the ramp; it is counted as flown.`;
  return trayEntryFor(message, 'conflict', sentence);
}
