import { instant, list, object, oneOf, orNull, ref, type Shape, text, whole } from '../../openapi/shape.js';
import { CHANGES } from '../movements.schema.js';

const used = object({ minutes: whole('Minutes.'), cycles: whole('Cycles.') }, 'What an engine used.');

const count = {
  id: text('id'),
  version: whole('The ETag; the highest version counts.'),
  kind: oneOf(['reading', 'run', 'withdrawn'], 'A reading, use that no leg tells, or withdrawn: it was never so.'),
  position: text('Where it stands on the aircraft.'),
  serial: orNull(text('Serial number of the engine.')),
  at: instant('When its counters read so, or when it ran'),
  minutes: whole('On the counter, or of the run.'),
  cycles: whole('On the counter, or of the run.'),
  reason: text('Where it is known from, or why it was changed.'),
  by: text('Who signed it.'),
  writtenAt: instant('When this version was written'),
};

const counters = list(
  object({
    position: text('Where it stands on the aircraft.'),
    serial: text('Serial number of the engine read last there.'),
    minutes: whole('Its hours in whole minutes, now.'),
    cycles: whole('Its cycles, now.'),
    read: object({
      at: instant('When it was read last'),
      minutes: whole('What it read.'),
      cycles: whole('What it read.'),
    }),
    since: used,
    differed: orNull(
      object(
        { minutes: whole('Minutes; negative where it read less.'), cycles: whole('Cycles; negative likewise.') },
        'The last reading less what was counted from the one before; null where that was of another engine.',
      ),
    ),
  }),
  'By position; engines of which nothing was ever read are not known.',
);

export const ENGINE_SHAPES: Record<string, Shape> = {
  EngineCountLine: object(count, 'One version of what was stated of an engine.'),
  EnginesView: object({
    at: instant('When this was read'),
    aircraft: text('id'),
    registration: text('Mark.'),
    counters,
    counts: list(
      object({ ...count, history: list(ref('EngineCountLine'), 'Earlier versions, the first one first.') }),
      'The newest first.',
    ),
  }),
  EngineCounted: object({ id: text('id'), version: whole('Version.'), counters, ...CHANGES }),
};
