import { useState } from 'preact/hooks';
import { Field } from '../shell/fields.js';
import { leftKind } from '../words/words.js';
import { RegisterAct, type RegisterFormProps } from './register-form.js';
import { ShiftLines } from './shift-lines.js';

/** The statement is the list itself: when the aircraft changes before it is signed, it is shown anew. */
export function GiveForm(props: RegisterFormProps) {
  const { view } = props;
  const [to, setTo] = useState('');
  const [note, setNote] = useState('');
  return (
    <RegisterAct
      {...props}
      address="hand-overs"
      act="give"
      body={() => ({ to, ...(note.trim() === '' ? {} : { note }) })}
      button="Sign: hand over"
      said="Handed over. It counts once somebody has taken it and signed."
    >
      <ShiftLines
        title="Left on it"
        lines={view.left.map(({ kind, where, tag, owner }) => `${leftKind(kind)}, ${tag}: ${where}, for ${owner}`)}
      />
      <ShiftLines title="Open, and half-worked" lines={view.open} />
      <Field label="Who takes over" most={120} value={to} onValue={setTo} pointer="/to" required />
      <Field label="What they should know" lines={3} most={2000} value={note} onValue={setNote} pointer="/note" />
    </RegisterAct>
  );
}

export function TakeForm(props: RegisterFormProps) {
  const { offered } = props.view;
  const [remarks, setRemarks] = useState('');
  if (offered === null) {
    return (
      <p>No hand-over waits to be taken. Whoever goes off shift signs one first, on the page of the register.</p>
    );
  }
  return (
    <RegisterAct
      {...props}
      address="hand-overs-taken"
      act="take"
      body={() => ({ given: offered.id, ...(remarks.trim() === '' ? {} : { remarks }) })}
      button="Sign: take over"
      said="Taken over."
    >
      <p>
        {offered.by} hands over to {offered.to}. {offered.note}
      </p>
      <ShiftLines title="Left on it" lines={offered.left} />
      <ShiftLines title="Open, and half-worked" lines={offered.open} />
      <Field label="Remarks" lines={2} most={2000} value={remarks} onValue={setRemarks} pointer="/remarks" />
    </RegisterAct>
  );
}
