import type { EntitySchemaColumnOptions } from 'typeorm';

type Column = EntitySchemaColumnOptions;
type Extra = Partial<Column>;

export const id = (extra: Extra = {}): Column => ({ type: 'uuid', ...extra });
export const key = (extra: Extra = {}): Column => ({ type: 'uuid', primary: true, ...extra });
export const text = (extra: Extra = {}): Column => ({ type: 'text', ...extra });
export const texts = (extra: Extra = {}): Column => ({ type: 'text', array: true, ...extra });
export const whole = (extra: Extra = {}): Column => ({ type: 'integer', ...extra });
export const yesNo = (extra: Extra = {}): Column => ({ type: 'boolean', ...extra });
export const bytes = (extra: Extra = {}): Column => ({ type: 'bytea', ...extra });
export const json = (extra: Extra = {}): Column => ({ type: 'jsonb', ...extra });
/** A calendar day, `YYYY-MM-DD`. */
export const day = (extra: Extra = {}): Column => ({ type: 'date', ...extra });
export const version = (): Column => whole({ default: 1 });
export const nullable = { nullable: true } as const;

/** An instant, ISO 8601 in UTC with milliseconds. Kept to the millisecond, so that what is read is what was written. */
export const instant = (extra: Extra = {}): Column => ({
  type: 'timestamp with time zone',
  precision: 3,
  transformer: { to: (value: unknown) => value, from: isoText },
  ...extra,
});

/** Counts beyond 2^31. They stay far below 2^53, where a number of JavaScript is still exact. */
export const count = (extra: Extra = {}): Column => ({
  type: 'bigint',
  transformer: {
    to: (value: unknown) => value,
    from: (value: string | null) => (value === null ? null : Number(value)),
  },
  ...extra,
});

export function isoText(value: Date | null): string | null {
  return value === null ? null : value.toISOString();
}
