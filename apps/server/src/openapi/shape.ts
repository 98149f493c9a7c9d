/** A few words for writing JSON Schema 2020-12 shapes of answers, so that they read like the shapes they describe. */
export interface Shape {
  [keyword: string]: unknown;
}

export const text = (description: string): Shape => ({ type: 'string', description });
export const instant = (description: string): Shape => ({
  type: 'string',
  format: 'date-time',
  description: `${description} (ISO 8601)`,
});
export const day = (description: string): Shape => ({ type: 'string', format: 'date', description });
export const whole = (description: string): Shape => ({ type: 'integer', description });
export const yesNo = (description: string): Shape => ({ type: 'boolean', description });
export const oneOf = (values: readonly string[], description: string): Shape => ({
  type: 'string',
  enum: [...values],
  description,
});
export const list = (items: Shape, description = ''): Shape => ({ type: 'array', items, description });
export const ref = (name: string): Shape => ({ $ref: `#/components/schemas/${name}` });
export const anything = (description: string): Shape => ({ description });

/** The same, or null when there is none. */
export const orNull = (shape: Shape): Shape => ({ anyOf: [shape, { type: 'null' }] });

/** An object that has these keys and no others; a key ending in `?` may be absent. */
export function object(keys: Record<string, Shape>, description = ''): Shape {
  const properties = Object.fromEntries(Object.entries(keys).map(([key, shape]) => [key.replace(/\?$/, ''), shape]));
  const required = Object.keys(keys).filter((key) => !key.endsWith('?'));
  return { type: 'object', properties, required, additionalProperties: false, description };
}

export function record(values: Shape, description = ''): Shape {
  return { type: 'object', additionalProperties: values, description };
}
