import { LeftList } from '../item/left-list.js';
import type { ActFormProps } from './act-form-props.js';
import { SignedAct } from './signed-act.js';

/** Releases the work and closes the item. What is still missing the server says. */
export function ReleaseForm(props: ActFormProps) {
  const { left } = props.view;
  return (
    <>
      {left.length > 0 && (
        <>
          <p class="strong">Still left on the aircraft for this item:</p>
          <LeftList left={left} own />
          <p>
            <a class="button" href={`/defects/${props.view.defect.id}/undone`}>
              Undo what is left
            </a>
          </p>
        </>
      )}
      <SignedAct
        {...props}
        address="release"
        body={() => ({})}
        button="Sign: release to service"
        said="Released to service. The item is closed."
      />
    </>
  );
}
