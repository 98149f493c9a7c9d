import { useState } from 'preact/hooks';
import { Field, Tick } from '../shell/fields.js';
import type { ActFormProps } from './act-form-props.js';
import { SignedAct } from './signed-act.js';

/** The work done, by which manual, with which parts, and what is asked for after it. */
export function RectifyForm(props: ActFormProps) {
  const [workDone, setWorkDone] = useState('');
  const [reference, setReference] = useState('');
  const [complete, setComplete] = useState(true);
  const [testAsked, setTestAsked] = useState(true);
  const [inspectionAsked, setInspectionAsked] = useState(false);
  const [part, setPart] = useState({ partNumber: '', serialOff: '', serialOn: '' });
  const parts = Object.fromEntries(Object.entries(part).filter(([, value]) => value.trim() !== ''));
  return (
    <SignedAct
      {...props}
      address="rectification"
      act="rectify"
      body={() => ({ workDone, reference, complete, testAsked, inspectionAsked, ...parts })}
      button="Sign: work done"
      said="The work is signed."
    >
      <Field
        label="What was done"
        lines={3}
        most={4000}
        value={workDone}
        onValue={setWorkDone}
        pointer="/workDone"
        required
      />
      <Field
        label="Manual reference, with revision"
        value={reference}
        onValue={setReference}
        pointer="/reference"
        required
      />
      <details>
        <summary>A part was fitted</summary>
        <Field
          label="Part number"
          most={80}
          value={part.partNumber}
          onValue={(partNumber) => setPart({ ...part, partNumber })}
          pointer="/partNumber"
          short
        />
        <Field
          label="Serial number off"
          most={80}
          value={part.serialOff}
          onValue={(serialOff) => setPart({ ...part, serialOff })}
          pointer="/serialOff"
          short
        />
        <Field
          label="Serial number on"
          most={80}
          value={part.serialOn}
          onValue={(serialOn) => setPart({ ...part, serialOn })}
          pointer="/serialOn"
          short
        />
      </details>
      <Tick label="The work is complete" ticked={complete} onTick={setComplete} />
      <Tick label="A test is asked for" ticked={testAsked} onTick={setTestAsked} />
      <Tick
        label="An independent inspection is asked for"
        hint="By another person than those who did the work"
        ticked={inspectionAsked}
        onTick={setInspectionAsked}
      />
    </SignedAct>
  );
}
