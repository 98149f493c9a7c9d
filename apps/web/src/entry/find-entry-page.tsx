import { useRoute } from 'preact-iso';
import { useEffect, useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { announce } from '../shell/announce.js';
import { Field } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { ProblemBox } from '../shell/problem-box.js';
import { Read } from '../shell/reading.js';
import { useSettled } from '../shell/use-settled.js';
import { counted } from '../words/words.js';

type EntryHit = Schemas['EntryHits']['hits'][number];

const LONGEST = 200;

/** Find what failed: the write-up's own words are looked for at once, so that often nothing need be typed. */
export function FindEntryPage() {
  const { id = '' } = useRoute().params;
  const read = useRead<Schemas['DefectView']>(`/defects/${id}`);
  const defect = read.value?.defect;
  return (
    <Page title="What failed?" back={{ href: `/defects/${id}`, text: defect?.number ?? 'The item' }}>
      <Read of={read}>{(view) => <Finding defect={view.defect} />}</Read>
    </Page>
  );
}

function Finding({ defect }: { defect: Schemas['DefectLine'] }) {
  const [words, setWords] = useState((defect.faultMessage ?? defect.description).slice(0, LONGEST));
  const query = useSettled(words.trim());
  const hits = useRead<Schemas['EntryHits']>(
    query === '' ? null : `/aircraft/${defect.aircraft}/entries?q=${encodeURIComponent(query)}`,
  );
  const found = hits.value?.hits ?? null;
  useEffect(() => {
    if (found) announce(counted(found.length, 'entry', 'entries', 'No entry'));
  }, [found]);
  return (
    <>
      <p>{defect.description}</p>
      <p class="soft">The item that failed, not the one suspected.</p>
      <Field
        label="Words, number, system (ATA chapter) or message"
        type="search"
        most={LONGEST}
        value={words}
        onValue={setWords}
        required
      />
      <ProblemBox problem={hits.problem} readAgain={() => void hits.readAgain()} />
      {found?.length === 0 && <p class="strong">No entry has these words. Try fewer, or the number.</p>}
      <Hits key={query} hits={found ?? []} defect={defect} />
      <h2>Not in the MEL?</h2>
      <div class="buttons">
        <a class="button" href={`/defects/${defect.id}/document`}>
          Defer on another document
        </a>
        <a class="button" href={`/defects/${defect.id}`}>
          Rectify, or answer otherwise
        </a>
      </div>
    </>
  );
}

const FIRST_SHOWN = 5;

/** The best few; the rest on demand. */
function Hits({ hits, defect }: { hits: EntryHit[]; defect: Schemas['DefectLine'] }) {
  const [all, setAll] = useState(false);
  const shown = all ? hits : hits.slice(0, FIRST_SHOWN);
  return (
    <>
      <ul class="plain-list cards">
        {shown.map((hit) => (
          <li key={hit.number}>
            <Hit hit={hit} href={`/defects/${defect.id}/entries/${hit.number}`} registration={defect.registration} />
          </li>
        ))}
      </ul>
      {shown.length < hits.length && (
        <button type="button" onClick={() => setAll(true)}>
          Show {hits.length - shown.length} more
        </button>
      )}
    </>
  );
}

interface HitProps {
  hit: EntryHit;
  href: string;
  registration: string;
}

const MOST_REASONS = 2;

function Hit({ hit, href, registration }: HitProps) {
  const { number, title, applies, because } = hit;
  return (
    <a class="big" href={href}>
      <span class="strong">{title}</span> <span class="number">{number}</span>
      <span class="block">
        {applies === 'yes' && `For ${registration}`}
        {applies === 'no' && <span class="strong">Not for {registration}</span>}
        {applies === 'not known' && <span class="strong">Not known whether for {registration}</span>}
        <span class="soft"> · {because.slice(0, MOST_REASONS).join('; ')}</span>
      </span>
    </a>
  );
}
