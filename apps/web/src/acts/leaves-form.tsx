import { Field } from '../shell/fields.js';
import { LEFT_KIND_CODES, leftKind } from '../words/words.js';

/** Something that the procedure leaves altered on the aircraft. */
export interface Leaving {
  kind: string;
  where: string;
  tag: string;
  undo: string;
  /** True when the procedure says so; what was added by hand may be taken away again. */
  asked: boolean;
}

interface LeavesFormProps {
  leaving: Leaving[];
  onLeaving(leaving: Leaving[]): void;
}

/** Everything that stays altered, each with the number on its collar, streamer or label. */
export function LeavesForm({ leaving, onLeaving }: LeavesFormProps) {
  const change = (index: number, part: Partial<Leaving>) =>
    onLeaving(leaving.map((one, at) => (at === index ? { ...one, ...part } : one)));
  return (
    <fieldset>
      <legend>Left on the aircraft by this</legend>
      {leaving.length === 0 && <p>Nothing.</p>}
      {leaving.map((one, index) => (
        <div key={index} class="leaving">
          {one.asked ? <AskedThing thing={one} /> : <AddedThing thing={one} index={index} change={change} />}
          <Field
            label="Number on its collar, streamer or label"
            most={40}
            value={one.tag}
            onValue={(tag) => change(index, { tag })}
            pointer={`/leaves/${index}/tag`}
            required
            short
          />
          {!one.asked && (
            <button type="button" onClick={() => onLeaving(leaving.filter((_, at) => at !== index))}>
              Not left after all
            </button>
          )}
        </div>
      ))}
      <button
        type="button"
        onClick={() => onLeaving([...leaving, { kind: 'breaker', where: '', tag: '', undo: '', asked: false }])}
      >
        Something else is left
      </button>
    </fieldset>
  );
}

function AskedThing({ thing: { kind, where, undo } }: { thing: Leaving }) {
  return (
    <p>
      <span class="strong">{leftKind(kind)}</span>, {where}
      <span class="soft block">To undo: {undo}</span>
    </p>
  );
}

interface AddedThingProps {
  thing: Leaving;
  index: number;
  change(index: number, part: Partial<Leaving>): void;
}

function AddedThing({ thing, index, change }: AddedThingProps) {
  return (
    <>
      <label class="field">
        What is left
        <select value={thing.kind} onChange={(event) => change(index, { kind: event.currentTarget.value })}>
          {LEFT_KIND_CODES.map((kind) => (
            <option key={kind} value={kind}>
              {leftKind(kind)}
            </option>
          ))}
        </select>
      </label>
      <Field
        label="Where: panel and position"
        value={thing.where}
        onValue={(where) => change(index, { where })}
        pointer={`/leaves/${index}/where`}
        required
      />
      <Field
        label="How it is undone"
        most={400}
        value={thing.undo}
        onValue={(undo) => change(index, { undo })}
        pointer={`/leaves/${index}/undo`}
        required
      />
    </>
  );
}
