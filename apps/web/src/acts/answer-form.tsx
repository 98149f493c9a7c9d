import { useState } from 'preact/hooks';
import { Field } from '../shell/fields.js';
import type { ActFormProps } from './act-form-props.js';
import { SignedAct } from './signed-act.js';

interface AnswerFormProps extends ActFormProps {
  act: 'no-fault-found' | 'raised-in-error';
}

/** The other answers to a write-up. Each closes it. */
export function AnswerForm({ act, ...props }: AnswerFormProps) {
  const [words, setWords] = useState('');
  const [reference, setReference] = useState('');
  const checked = act === 'no-fault-found';
  return (
    <SignedAct
      {...props}
      address={act}
      body={() => ({ words, ...(checked ? { reference } : {}) })}
      button={checked ? 'Sign: no fault found' : 'Sign: raised in error'}
      said={checked ? 'Answered: no fault found.' : 'Answered: raised in error.'}
    >
      <Field
        label={checked ? 'What was checked' : 'Why it was raised in error'}
        lines={3}
        most={2000}
        value={words}
        onValue={setWords}
        pointer="/words"
        required
      />
      {checked && (
        <Field
          label="Manual reference, with revision"
          value={reference}
          onValue={setReference}
          pointer="/reference"
          required
        />
      )}
    </SignedAct>
  );
}
