/** What is answered about engines. */
import type { EngineCounter } from '#intervals';
import type { EngineCountRow } from '#store';

export function counterLine({ position, serial, minutes, cycles, reading, since, differed }: EngineCounter) {
  const { readAt } = reading;
  return {
    position,
    serial,
    minutes,
    cycles,
    read: { at: readAt, minutes: reading.minutes, cycles: reading.cycles },
    since,
    differed,
  };
}

/** The newest version of each with those before it; withdrawn ones too, since they were stated. */
export function countLines(versions: readonly EngineCountRow[], names: ReadonlyMap<string, { name: string }>) {
  const newest = new Map<string, EngineCountRow>();
  for (const row of versions) {
    const known = newest.get(row.id);
    if (known === undefined || known.version < row.version) newest.set(row.id, row);
  }
  const line = (row: EngineCountRow) => ({
    id: row.id,
    version: row.version,
    kind: row.kind,
    position: row.position,
    serial: row.serial,
    at: row.at,
    minutes: row.minutes,
    cycles: row.cycles,
    reason: row.reason,
    by: names.get(row.personId)?.name ?? '(name erased)',
    writtenAt: row.writtenAt,
  });
  return [...newest.values()]
    .sort((one, other) => other.at.localeCompare(one.at) || one.id.localeCompare(other.id))
    .map((row) => ({
      ...line(row),
      history: versions
        .filter(({ id, version }) => id === row.id && version < row.version)
        .sort((one, other) => one.version - other.version)
        .map(line),
    }));
}
