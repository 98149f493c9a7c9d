import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { Choice, Field, Tick } from '../shell/fields.js';
import { Read } from '../shell/reading.js';
import { itemName } from '../words/words.js';
import { DocumentFields, documentSent, NO_DOCUMENT } from './document-fields.js';
import { RegisterAct, type RegisterFormProps } from './register-form.js';
import { ThingsChoice } from './things-choice.js';

const DOCUMENT = 'document';

/** Who gives and who takes are written together: it is never without an owner in between. */
export function MoveForm(props: RegisterFormProps) {
  const aircraft = useRead<Schemas['AircraftView']>(`/aircraft/${props.view.aircraft}`);
  const [items, setItems] = useState<string[]>([]);
  const [to, setTo] = useState<string | null>(null);
  const [document, setDocument] = useState(NO_DOCUMENT);
  const [together, setTogether] = useState(false);
  const [reason, setReason] = useState('');
  if (props.view.left.length === 0) return <p>Nothing is left on the aircraft whose owner could change.</p>;
  const owner = to === DOCUMENT ? { document: documentSent(document) } : { defect: to };
  return (
    <Read of={aircraft}>
      {(view) => (
        <RegisterAct
          {...props}
          address="moves"
          act="move"
          body={() => ({ items, ...owner, together: together && to !== DOCUMENT, reason })}
          button="Sign: belongs to this owner"
          said="The owner is changed. It stays on the aircraft."
        >
          <ThingsChoice legend="Which, all of one owner" lines={props.view.left} chosen={items} onChosen={setItems} />
          <Choice
            legend="It belongs from now on to"
            options={[
              ...view.items.map((item) => ({ value: item.id, text: `${item.number} ${itemName(item)}` })),
              { value: DOCUMENT, text: 'A modification, directive or permit' },
            ]}
            value={to}
            onValue={setTo}
          />
          {to === DOCUMENT ? (
            <DocumentFields named={document} onNamed={setDocument} pointer="/document" />
          ) : (
            <Tick
              label="The item that has it needs it too"
              hint="Then it belongs to both, and is undone with the last one"
              ticked={together}
              onTick={setTogether}
            />
          )}
          <Field label="Why" lines={2} most={1000} value={reason} onValue={setReason} pointer="/reason" required />
        </RegisterAct>
      )}
    </Read>
  );
}
