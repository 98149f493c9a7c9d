import { useLocation, useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { type Reading, useRead } from '../api/use-read.js';
import { carryOver } from '../shell/announce.js';
import { type PlacardOwed, placardsOf } from '../item/work-address.js';
import { Field } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { itemName } from '../words/words.js';
import { SignForm } from './sign-form.js';

type DefectView = Schemas['DefectView'];

/** The placard as the row asks for it: text and place are there, its number is entered. */
export function PlacardPage() {
  const { id = '', entry = '', row = '' } = useRoute().params;
  const defect = useRead<DefectView>(`/defects/${id}`);
  return (
    <Page
      title="Placard"
      aside={defect.value && itemName(defect.value.defect)}
      back={{ href: `/defects/${id}`, text: defect.value?.defect.number ?? 'The item' }}
    >
      <Read of={defect}>
        {(view) => {
          const asked = placardsOf(view.defect).find(({ work }) => work === `${entry}/${row}/placard`);
          return asked ? (
            <PlacardForm reading={defect} id={id} placard={asked} />
          ) : (
            <p class="strong">
              No placard is asked for by row {row} of {entry}.
            </p>
          );
        }}
      </Read>
    </Page>
  );
}

interface PlacardFormProps {
  reading: Reading<DefectView>;
  id: string;
  placard: PlacardOwed;
}

function PlacardForm({ reading, id, placard }: PlacardFormProps) {
  const { route } = useLocation();
  const [where, setWhere] = useState(placard.position);
  const [tag, setTag] = useState('');
  return (
    <SignForm<Schemas['ActDone']>
      statementPath={`/defects/${id}/statement?act=placard`}
      path={`/defects/${id}/placard`}
      seen={reading.etag}
      body={() => ({ text: placard.text, where, tag })}
      button="Sign: placard fitted"
      done={() => {
        carryOver({ title: `Placard ${tag} is signed.`, lines: [] });
        route(`/defects/${id}`);
      }}
      readAgain={() => void reading.readAgain()}
    >
      <p class="placard">{placard.text}</p>
      <Field label="Where it is fitted" lines={2} value={where} onValue={setWhere} pointer="/where" required />
      <Field label="Number on the placard" most={40} value={tag} onValue={setTag} pointer="/tag" required short />
    </SignForm>
  );
}
