/** Every salted reference of a person that stands anywhere in an entry: who acted, who signed, who holds an authorisation. */
export function referencesIn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(referencesIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    isReference(inner) && PERSONS.has(key) ? [inner] : referencesIn(inner),
  );
}

const PERSONS = new Set(['who', 'person']);

function isReference(value: unknown): value is string {
  return typeof value === 'string' && /^[0-9a-f]{64}$/.test(value);
}
