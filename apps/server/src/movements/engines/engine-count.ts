/** What a person states of an engine, checked against what is known. */
import type { EngineCountRow } from '#store';
import { Problem } from '../../http/problem.js';
import type { EngineCountBody } from './bodies.js';

const MINUTE = 60_000;
/** A run by itself is no longer than a day. */
const LONGEST_RUN = 24 * 60;
const MOST_STARTS = 50;

export type CountContent = Pick<
  EngineCountRow,
  'kind' | 'position' | 'serial' | 'at' | 'minutes' | 'cycles' | 'reason'
>;

/** @throws Problem naming everything that is wrong with it */
export function countOf(body: EngineCountBody, others: readonly EngineCountRow[], now: string): CountContent {
  const { kind, reason, minutes, cycles } = body;
  const at = new Date(body.at).toISOString();
  const content = {
    kind,
    position: body.position.trim(),
    serial: body.serial?.trim() ?? null,
    at,
    minutes,
    cycles,
    reason,
  };
  const errors = [...wrongInItself(content, now), ...wrongBesideOthers(content, others)];
  if (errors.length > 0) {
    throw new Problem('invalid-input', errors.map((one) => one.reason).join('; '), { errors });
  }
  return content;
}

interface Wrong {
  pointer: string;
  reason: string;
}

function wrongInItself({ kind, serial, at, minutes, cycles }: CountContent, now: string): Wrong[] {
  const wrong: Wrong[] = [];
  const refuse = (field: string, reason: string) => wrong.push({ pointer: `/${field}`, reason });
  if (Date.parse(at) % MINUTE !== 0) refuse('at', `${at} is no whole minute`);
  if (at > now) refuse('at', `${at} has not come yet`);
  if (kind === 'reading' && serial === null) refuse('serial', 'a reading is of one engine: name its serial number');
  if (kind === 'run' && minutes > LONGEST_RUN) refuse('minutes', `a run of ${minutes} minutes is longer than a day`);
  if (kind === 'run' && cycles > MOST_STARTS) refuse('cycles', `${cycles} cycles are not those of one run`);
  if (kind === 'run' && minutes + cycles === 0) refuse('minutes', 'the run used nothing');
  return wrong;
}

/** The counters of one engine never run back, wherever on the aircraft it stands. */
function wrongBesideOthers(content: CountContent, others: readonly EngineCountRow[]): Wrong[] {
  const { kind, serial, at } = content;
  if (kind !== 'reading') return [];
  return others
    .filter((one) => one.kind === 'reading' && one.serial === serial)
    .flatMap((one): Wrong[] => {
      const [earlier, later] = one.at <= at ? [one, content] : [content, one];
      return (['minutes', 'cycles'] as const).flatMap((counter) =>
        later[counter] < earlier[counter]
          ? [
              {
                pointer: `/${counter}`,
                reason: `engine ${serial} read ${earlier[counter]} ${counter} at ${earlier.at} and cannot read ${later[counter]} at ${later.at}`,
              },
            ]
          : [],
      );
    });
}
