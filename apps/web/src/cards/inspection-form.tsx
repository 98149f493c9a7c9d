import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { Field } from '../shell/fields.js';
import { type StepProps, stepsInWords } from './step-props.js';

/** An independent inspection: another person signs, signed in as themselves, here or on their own telephone. */
export function InspectionForm({ reading, view: { defect, work }, step, done }: StepProps) {
  const [findings, setFindings] = useState('');
  const asked = new URLSearchParams({ act: 'card-inspection', work: work.id }).toString();
  return (
    <>
      <p>
        <strong>Ask a second person to look and sign.</strong> They open this page signed in as themselves. It is
        never somebody who had a hand in {stepsInWords(work.steps, step.inspects)}.
      </p>
      <SignForm<Schemas['ActDone']>
        statementPath={`/defects/${defect.id}/statement?${asked}`}
        path={`/defects/${defect.id}/card-inspections`}
        seen={reading.etag}
        body={() => ({ work: work.id, step: step.id, findings })}
        button="Sign the inspection"
        done={() => {
          done();
          void reading.readAgain();
        }}
        readAgain={() => void reading.readAgain()}
      >
        <Field
          label="What you looked at and found"
          value={findings}
          onValue={setFindings}
          pointer="/findings"
          required
        />
      </SignForm>
    </>
  );
}
