import { Field } from '../shell/fields.js';
import { LEFT_KIND_CODES, leftKind } from '../words/words.js';

export interface Thing {
  kind: string;
  panel: string;
  place: string;
  tag: string;
  undo: string;
}

export const NO_THING: Thing = { kind: 'breaker', panel: '', place: '', tag: '', undo: '' };

/** As the register keeps it: panel and position in one line. */
export function thingSent({ kind, panel, place, tag, undo }: Thing): object {
  return { kind, where: panel.trim() === '' ? place : `${panel}, ${place}`, tag, undo };
}

/** One thing left on the aircraft; a breaker is named by panel, position and collar. */
export function ThingFields({ thing, onThing }: { thing: Thing; onThing(thing: Thing): void }) {
  const breaker = thing.kind === 'breaker';
  return (
    <fieldset>
      <legend>The thing</legend>
      <label class="field">
        What it is
        <select value={thing.kind} onChange={(event) => onThing({ ...thing, kind: event.currentTarget.value })}>
          {LEFT_KIND_CODES.map((kind) => (
            <option key={kind} value={kind}>
              {leftKind(kind)}
            </option>
          ))}
        </select>
      </label>
      {breaker && (
        <Field
          label="Panel"
          most={80}
          value={thing.panel}
          onValue={(panel) => onThing({ ...thing, panel })}
          required
          short
        />
      )}
      <Field
        label={breaker ? 'Position' : 'Where it is'}
        most={100}
        value={thing.place}
        onValue={(place) => onThing({ ...thing, place })}
        pointer="/items/0/where"
        required
      />
      <Field
        label={breaker ? 'Number on its collar' : 'Number on it: streamer, placard or label'}
        most={40}
        value={thing.tag}
        onValue={(tag) => onThing({ ...thing, tag })}
        pointer="/items/0/tag"
        required
        short
      />
      <Field
        label="How it is undone"
        most={400}
        value={thing.undo}
        onValue={(undo) => onThing({ ...thing, undo })}
        pointer="/items/0/undo"
        required
      />
    </fieldset>
  );
}
