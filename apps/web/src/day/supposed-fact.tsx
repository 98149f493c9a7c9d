import { useId, useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';

type Fact = Schemas['FactList']['facts'][number];

interface SupposedFactProps {
  /** 1 for the first of several. */
  which: number;
  facts: readonly Fact[];
  onFact(fact: { key: string; value: string | number | boolean } | null): void;
}

/** One fact of the flight as such, taken as known. Those about one item are answered where the item stands. */
export function SupposedFact({ which, facts, onFact }: SupposedFactProps) {
  const id = useId();
  const [key, setKey] = useState('');
  const [typed, setTyped] = useState('');
  const offered = facts.filter(({ id: name, subject }) => name.startsWith('flight.') && subject === 'none');
  const fact = offered.find((one) => one.id === key);
  const choices = fact?.type === 'boolean' ? ['yes', 'no'] : (fact?.choices ?? null);

  function change(nextKey: string, nextTyped: string): void {
    setKey(nextKey);
    setTyped(nextTyped);
    const next = offered.find((one) => one.id === nextKey);
    onFact(next === undefined || nextTyped === '' ? null : { key: nextKey, value: valueOf(next, nextTyped) });
  }

  return (
    <fieldset>
      <legend>Take as known{which === 1 ? '' : `, fact ${which}`}</legend>
      <div class="field">
        <label for={`${id}-fact`}>Of the flight</label>
        <select id={`${id}-fact`} value={key} onChange={(event) => change(event.currentTarget.value, '')}>
          <option value="">nothing else</option>
          {offered.map((one) => (
            <option key={one.id} value={one.id}>
              {one.label}
            </option>
          ))}
        </select>
      </div>
      {fact && (
        <div class="field">
          <label for={`${id}-value`}>
            {fact.label}
            {fact.unit === null ? '' : ` (${fact.unit})`}
          </label>
          {choices ? (
            <select
              id={`${id}-value`}
              required
              value={typed}
              onChange={(event) => change(key, event.currentTarget.value)}
            >
              <option value="">choose</option>
              {choices.map((choice) => (
                <option key={choice} value={choice}>
                  {choice}
                </option>
              ))}
            </select>
          ) : (
            <input
              id={`${id}-value`}
              class="short"
              required
              value={typed}
              inputMode="numeric"
              onInput={(event) => change(key, event.currentTarget.value)}
            />
          )}
        </div>
      )}
    </fieldset>
  );
}

/** What is no number is sent as it was typed: the server says what it wants instead. */
function valueOf({ type }: Fact, typed: string): string | number | boolean {
  if (type === 'boolean') return typed === 'yes';
  const value = Number(typed.replace(',', '.'));
  return type !== 'number' || Number.isNaN(value) ? typed : value;
}
