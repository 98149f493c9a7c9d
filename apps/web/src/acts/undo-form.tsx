import { useState } from 'preact/hooks';
import { Tick } from '../shell/fields.js';
import { counted, leftKind } from '../words/words.js';
import type { ActFormProps } from './act-form-props.js';
import { SignedAct } from './signed-act.js';

/** Ticks off what was put back, thing by thing, by the number on it. */
export function UndoForm(props: ActFormProps) {
  const { left } = props.view;
  const [undone, setUndone] = useState<string[]>([]);
  if (left.length === 0) return <p>Nothing of this item is left on the aircraft.</p>;
  const count = counted(undone.length, 'thing', 'things', 'nothing');
  return (
    <SignedAct
      {...props}
      address="undone"
      act="undo"
      body={() => ({ items: undone })}
      button={undone.length === 0 ? 'Sign: undone' : `Sign: ${count} undone`}
      said={`Undone: ${count}.`}
    >
      <fieldset>
        <legend>Undone now</legend>
        <div class="choices">
          {left.map(({ id, kind, where, tag, undo }) => (
            <Tick
              key={id}
              label={`${leftKind(kind)}, ${tag}: ${where}`}
              hint={undo}
              ticked={undone.includes(id)}
              onTick={(ticked) => setUndone(ticked ? [...undone, id] : undone.filter((one) => one !== id))}
            />
          ))}
        </div>
      </fieldset>
    </SignedAct>
  );
}
