import { useState } from 'preact/hooks';
import { Field } from '../shell/fields.js';
import { DocumentFields, documentSent, NO_DOCUMENT } from './document-fields.js';
import { RegisterAct, type RegisterFormProps } from './register-form.js';
import { NO_THING, ThingFields, thingSent } from './thing-fields.js';

export function FittedForm(props: RegisterFormProps) {
  const [thing, setThing] = useState(NO_THING);
  const [owner, setOwner] = useState(NO_DOCUMENT);
  return (
    <RegisterAct
      {...props}
      address="fitted"
      act="fitted"
      body={() => ({ items: [thingSent(thing)], owner: documentSent(owner) })}
      button="Sign: left under this document"
      said="It is in the register, under its document."
    >
      <ThingFields thing={thing} onThing={setThing} />
      <DocumentFields named={owner} onNamed={setOwner} pointer="/owner" />
    </RegisterAct>
  );
}

/** Whatever is still altered under it has no owner afterwards, and the aircraft may not fly with it. */
export function EndedForm(props: RegisterFormProps) {
  const [document, setDocument] = useState(NO_DOCUMENT);
  const [reason, setReason] = useState('');
  return (
    <RegisterAct
      {...props}
      address="ended-documents"
      act="ended"
      body={() => ({ document: documentSent(document), reason })}
      button="Sign: no longer in force"
      said="The document is no longer in force. What is left under it has no owner."
    >
      <p class="strong">What is still altered under it has no owner then, and the aircraft may not fly with it.</p>
      <DocumentFields named={document} onNamed={setDocument} pointer="/document" withEnd={false} />
      <Field label="Why" lines={2} most={1000} value={reason} onValue={setReason} pointer="/reason" required />
    </RegisterAct>
  );
}
