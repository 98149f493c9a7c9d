import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { carryOver } from '../shell/announce.js';
import { FileField } from '../shell/file-field.js';
import { Page } from '../shell/page.js';
import { ProblemBox } from '../shell/problem-box.js';

/** Loads a library of work cards from a file. A bad file loads nothing, and every error is named with its card and step. */
export function LibraryPage() {
  const { route } = useLocation();
  const { send, sending, problem } = useAct();
  const [file, setFile] = useState<File | null>(null);

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    if (file === null) return;
    const body = { file: file.name, text: await file.text() };
    const loaded = await send<Schemas['CardsLoaded']>({ method: 'POST', path: '/cards', body });
    if (!loaded) return;
    const { document, revision, cards, warnings } = loaded.body;
    carryOver({ title: `${document}, revision ${revision}, is in force with ${cards} cards.`, lines: warnings });
    route('/cards');
  }

  return (
    <Page title="Load a library of cards" back={{ href: '/cards', text: 'Work cards' }}>
      <p>
        A file of cards for one aircraft type, YAML or JSON. It is checked whole: each pair is matched, each step can
        be reached, each limit can be kept, each entry is one of the MEL. A good one comes into force at once; work
        that was started goes on by the card as it read then.
      </p>
      <form onSubmit={(event) => void submit(event)}>
        <FileField id="library-file" onFile={setFile} />
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            Check it and put it in force
          </button>
        </div>
      </form>
    </Page>
  );
}
