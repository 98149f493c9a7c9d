import type { ComponentType } from 'preact';
import { useLocation, useRoute } from 'preact-iso';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { carryOver } from '../shell/announce.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { AsWrittenForm, CorrectionForm, SecondLookForm } from './correction-forms.js';
import { EndedForm, FittedForm } from './document-forms.js';
import { FoundForm } from './found-form.js';
import { GiveForm, TakeForm } from './hand-over-forms.js';
import { MoveForm } from './move-form.js';
import type { RegisterFormProps } from './register-form.js';
import { RemovedForm, SeenForm } from './things-forms.js';

interface Kind {
  title: string;
  form: ComponentType<RegisterFormProps>;
}

const ACTS: Record<string, Kind> = {
  found: { title: 'I found something', form: FoundForm },
  removed: { title: 'Undo something', form: RemovedForm },
  seen: { title: 'See that it is undone', form: SeenForm },
  moves: { title: 'Change the owner', form: MoveForm },
  fitted: { title: 'Fitted under a document', form: FittedForm },
  'ended-documents': { title: 'A document ended', form: EndedForm },
  corrections: { title: 'Something is mistyped', form: CorrectionForm },
  'second-looks': { title: 'A second look', form: SecondLookForm },
  'as-written': { title: 'It stays as written', form: AsWrittenForm },
  'hand-overs': { title: 'Hand over the shift', form: GiveForm },
  'hand-overs-taken': { title: 'Take over the shift', form: TakeForm },
};

/** One act on what is left on an aircraft. */
export function RegisterActPage() {
  const { id = '', act = '' } = useRoute().params;
  const { route, query } = useLocation();
  const register = useRead<Schemas['RegisterView']>(`/aircraft/${id}/left`);
  const kind = ACTS[act];

  function done(title: string): void {
    carryOver({ title, lines: [] });
    route(`/aircraft/${id}/left`);
  }

  return (
    <Page
      title={kind?.title ?? 'There is no such page'}
      aside={register.value?.registration}
      back={{ href: `/aircraft/${id}/left`, text: 'Left on the aircraft' }}
    >
      {kind && (
        <Read of={register}>
          {(view) => (
            <kind.form
              view={view}
              seen={register.etag}
              query={query}
              done={done}
              readAgain={() => void register.readAgain()}
            />
          )}
        </Read>
      )}
    </Page>
  );
}
