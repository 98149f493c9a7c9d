import { useState } from 'preact/hooks';
import { counted } from '../words/words.js';
import { RegisterAct, type RegisterFormProps } from './register-form.js';
import { ThingsChoice } from './things-choice.js';

/** What belongs to an open item is undone there; here what belongs to a document or to nobody. */
export function RemovedForm(props: RegisterFormProps) {
  const [items, setItems] = useState<string[]>([]);
  const own = props.view.left.filter(({ ownerKind }) => ownerKind !== 'defect');
  const count = counted(items.length, 'thing', 'things', 'nothing');
  const elsewhere = 'What belongs to an open item is undone on the page of that item.';
  if (own.length === 0) return <p>Nothing is left for a document or without an owner. {elsewhere}</p>;
  return (
    <RegisterAct
      {...props}
      address="removed"
      act="removed"
      body={() => ({ items })}
      button={`Sign: ${count} undone`}
      said={`Undone: ${count}. Another person may look and sign.`}
    >
      <p class="soft">{elsewhere}</p>
      <ThingsChoice legend="Undone now" lines={own} chosen={items} onChosen={setItems} />
    </RegisterAct>
  );
}

export function SeenForm(props: RegisterFormProps) {
  const [items, setItems] = useState<string[]>([]);
  const unseen = props.view.undone.filter(
    ({ verifiedAt, ownerKind }) => verifiedAt === null && ownerKind !== 'defect',
  );
  if (unseen.length === 0) return <p>Nothing that was undone waits for a second look.</p>;
  return (
    <RegisterAct
      {...props}
      address="seen"
      act="seen"
      body={() => ({ items })}
      button={`Sign: ${counted(items.length, 'thing', 'things', 'nothing')} seen`}
      said="It is signed that they are seen to be undone."
    >
      <ThingsChoice legend="You looked, and it is undone" lines={unseen} chosen={items} onChosen={setItems} />
    </RegisterAct>
  );
}
