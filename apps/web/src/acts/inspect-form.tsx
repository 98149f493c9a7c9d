import { useState } from 'preact/hooks';
import { useSession } from '../session/session.js';
import { Field } from '../shell/fields.js';
import { useSettled } from '../shell/use-settled.js';
import type { ActFormProps } from './act-form-props.js';
import { SignedAct } from './signed-act.js';

/** A second person, who did none of the work, looked at it. */
export function InspectForm(props: ActFormProps) {
  const [findings, setFindings] = useState('');
  const [unforeseen, setUnforeseen] = useState('');
  const { person } = useSession();
  const own = props.view.openWork?.performers.includes(person.name) === true;
  const settled = useSettled(own ? unforeseen.trim() : '');
  return (
    <SignedAct
      {...props}
      address="inspection"
      act="inspect"
      query={settled === '' ? {} : { unforeseen: settled }}
      body={() => ({ findings, ...(settled === '' ? {} : { unforeseen: settled }) })}
      button="Sign: inspected"
      said="The independent inspection is signed."
    >
      <Field
        label="What you looked at and found"
        lines={3}
        most={1000}
        value={findings}
        onValue={setFindings}
        pointer="/findings"
        required
      />
      {own && (
        <Field
          label="Why nobody else can inspect it"
          hint="You did some of the work. Only in an unforeseen case, and only where the operator's rules know one."
          lines={2}
          most={1000}
          value={unforeseen}
          onValue={setUnforeseen}
          pointer="/unforeseen"
        />
      )}
    </SignedAct>
  );
}
