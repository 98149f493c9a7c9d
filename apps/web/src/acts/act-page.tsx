import { useLocation, useRoute } from 'preact-iso';
import type { ComponentType } from 'preact';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { carryOver } from '../shell/announce.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { itemName } from '../words/words.js';
import type { ActFormProps } from './act-form-props.js';
import { AnswerForm } from './answer-form.js';
import { CorrectForm } from './correct-form.js';
import { LookForm } from './look-form.js';
import { JoinForm } from './join-form.js';
import { StaysForm } from './stays-form.js';
import { SwapForm } from './swap-form.js';
import { InspectForm } from './inspect-form.js';
import { RectifyForm } from './rectify-form.js';
import { ReleaseForm } from './release-form.js';
import { RestoreForm } from './restore-form.js';
import { TestForm } from './test-form.js';
import { UndoForm } from './undo-form.js';
import { VerifyForm } from './verify-form.js';
import { UnitForm } from './unit-form.js';

interface ActKind {
  title: string;
  form: ComponentType<ActFormProps>;
}

const NoFaultFound = (props: ActFormProps) => <AnswerForm {...props} act="no-fault-found" />;
const RaisedInError = (props: ActFormProps) => <AnswerForm {...props} act="raised-in-error" />;

const ACTS: Record<string, ActKind> = {
  rectification: { title: 'Rectify', form: RectifyForm },
  test: { title: 'Test', form: TestForm },
  undone: { title: 'Undo what is left', form: UndoForm },
  restoration: { title: 'Restore', form: RestoreForm },
  inspection: { title: 'Independent inspection', form: InspectForm },
  joining: { title: 'The same defect again', form: JoinForm },
  swap: { title: 'Swap the part', form: SwapForm },
  verification: { title: 'Go over the aircraft', form: VerifyForm },
  release: { title: 'Release to service', form: ReleaseForm },
  'no-fault-found': { title: 'No fault found', form: NoFaultFound },
  'raised-in-error': { title: 'Raised in error', form: RaisedInError },
  correction: { title: 'Correct what was written', form: CorrectForm },
  'second-look': { title: 'A second look', form: LookForm },
  'as-written': { title: 'It stays as written', form: StaysForm },
  unit: { title: 'Which one failed', form: UnitForm },
};

/** One act on one item. */
export function ActPage() {
  const { id = '', act = '' } = useRoute().params;
  const { route } = useLocation();
  const defect = useRead<Schemas['DefectView']>(`/defects/${id}`);
  const kind = ACTS[act];
  const line = defect.value?.defect;

  function done(title: string): void {
    carryOver({ title, lines: [] });
    route(`/defects/${id}`);
  }

  return (
    <Page
      title={kind?.title ?? 'There is no such page'}
      aside={line?.entry ? itemName(line) : undefined}
      back={{ href: `/defects/${id}`, text: line?.number ?? 'The item' }}
    >
      {kind && (
        <Read of={defect}>
          {(view) => (
            <>
              <p class="soft">{view.defect.description}</p>
              <kind.form view={view} seen={defect.etag} done={done} readAgain={() => void defect.readAgain()} />
            </>
          )}
        </Read>
      )}
    </Page>
  );
}
