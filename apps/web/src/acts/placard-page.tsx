import { useLocation, useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { type Reading, useRead } from '../api/use-read.js';
import { carryOver } from '../shell/announce.js';
import { Field } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { itemName } from '../words/words.js';
import { SignForm } from './sign-form.js';

type DefectView = Schemas['DefectView'];

/** The placard as the row asks for it: text and place are there, its number is entered. */
export function PlacardPage() {
  const { id = '' } = useRoute().params;
  const defect = useRead<DefectView>(`/defects/${id}`);
  return (
    <Page
      title="Placard"
      aside={defect.value && itemName(defect.value.defect)}
      back={{ href: `/defects/${id}`, text: defect.value?.defect.number ?? 'The item' }}
    >
      <Read of={defect}>{(view) => <PlacardForm reading={defect} view={view} />}</Read>
    </Page>
  );
}

function PlacardForm({ reading, view }: { reading: Reading<DefectView>; view: DefectView }) {
  const { id, placard } = view.defect;
  const { route } = useLocation();
  const [text, setText] = useState(placard?.text ?? '');
  const [where, setWhere] = useState(placard?.position ?? '');
  const [tag, setTag] = useState('');
  return (
    <SignForm<Schemas['ActDone']>
      statementPath={`/defects/${id}/statement?act=placard`}
      path={`/defects/${id}/placard`}
      seen={reading.etag}
      body={() => ({ text, where, tag })}
      button="Sign: placard fitted"
      done={() => {
        carryOver({ title: `Placard ${tag} is signed.`, lines: [] });
        route(`/defects/${id}`);
      }}
      readAgain={() => void reading.readAgain()}
    >
      {placard && <p class="placard">{placard.text}</p>}
      {!placard && (
        <Field label="Text on the placard" most={400} value={text} onValue={setText} pointer="/text" required />
      )}
      <Field label="Where it is fitted" lines={2} value={where} onValue={setWhere} pointer="/where" required />
      <Field label="Number on the placard" most={40} value={tag} onValue={setTag} pointer="/tag" required short />
      {!placard && <p class="soft">The row asks for no placard. One may be fitted all the same.</p>}
    </SignForm>
  );
}
