import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { Choice, Field } from '../shell/fields.js';
import { Read } from '../shell/reading.js';
import { itemName } from '../words/words.js';
import type { ActFormProps } from './act-form-props.js';
import { SignedAct } from './signed-act.js';

/** The same unit written up again goes on as another entry of the item that is open; its clock stays. */
export function JoinForm(props: ActFormProps) {
  const { defect } = props.view;
  const aircraft = useRead<Schemas['AircraftView']>(`/aircraft/${defect.aircraft}`);
  const [other, setOther] = useState<string | null>(null);
  const [reason, setReason] = useState('');
  return (
    <Read of={aircraft}>
      {({ items }) =>
        items.every(({ id, basis }) => id === defect.id || basis === null) ? (
          <p>
            No other item of {defect.registration} is open, so this is none of them. Answer it by itself: defer it,
            rectify it, or say what was checked.
          </p>
        ) : (
          <SignedAct
            {...props}
            address="joining"
            act="join"
            body={() => ({ other, reason })}
            button="Sign: the same defect"
            said="It goes on as another entry of the open item, whose clock stays."
          >
            <Choice
              legend="The open item it is another entry of"
              options={items
                .filter(({ id, basis }) => id !== defect.id && basis !== null)
                .map((item) => ({ value: item.id, text: `${item.number} ${itemName(item)}` }))}
              value={other}
              onValue={setOther}
            />
            <Field
              label="Why it is the same"
              lines={2}
              most={1000}
              value={reason}
              onValue={setReason}
              pointer="/reason"
              required
            />
          </SignedAct>
        )
      }
    </Read>
  );
}
