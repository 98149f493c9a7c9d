import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { counted } from '../words/words.js';
import { Asked, ExtensionState, NoticeState } from './extension-states.js';
import { NoticeForm } from './notice-form.js';

const MAY_NOTE = ['maintenance-control', 'engineer', 'quality'];

/** The register of all extensions, for whoever owes the notices and for whoever audits them. */
export function ExtensionsPage() {
  const { operator } = useSession();
  const read = useRead<Schemas['ExtensionRegister']>('/extensions');
  const back = { href: '/defects', text: 'Open items' };
  return (
    <Page title="Extensions" back={back} aside={read.value && `as of ${withOffset(read.value.at, operator.base)}`}>
      <Read of={read}>
        {({ extensions, overdue, more }) => (
          <>
            {overdue > 0 && (
              <p class="caution">
                <span class="state heavy">OVERDUE</span> {counted(overdue, 'notice', 'notices', 'none')} to the
                authority: print it, send it, and note that it was sent.
              </p>
            )}
            {extensions.length === 0 && <p>Nothing was ever extended.</p>}
            <ul class="plain-list">
              {extensions.map((line) => (
                <li key={line.id}>
                  <div class="card">
                    <Extension line={line} noted={(said) => (announce(said), void read.readAgain())} />
                  </div>
                </li>
              ))}
            </ul>
            {more && <p class="soft">Older ones are not shown.</p>}
          </>
        )}
      </Read>
    </Page>
  );
}

interface ExtensionProps {
  line: Schemas['ExtensionLine'];
  noted(said: string): void;
}

function Extension({ line, noted }: ExtensionProps) {
  const { roles } = useSession();
  const { id, defect, number, title, entry, notice, asked, version } = line;
  const next = notice && nextOf(notice);
  return (
    <>
      <h2>
        <a href={`/defects/${defect}/extension`}>{number}</a> {entry} {title}
      </h2>
      <ExtensionState line={line} />
      {notice && (
        <>
          <NoticeState notice={notice} />
          <p>
            <a href={`/api/extensions/${id}/notice`} target="_blank" rel="noreferrer">
              The notice to print
            </a>
          </p>
        </>
      )}
      {next && roles.some((role) => MAY_NOTE.includes(role)) && (
        <NoticeForm key={version} extension={id} version={version} what={next} noted={noted} />
      )}
      <details>
        <summary>Reason and plan</summary>
        <Asked asked={asked} />
      </details>
    </>
  );
}

function nextOf({ state }: Schemas['NoticeLine']): 'sent' | 'acknowledged' | null {
  if (state === 'due' || state === 'overdue') return 'sent';
  return state === 'sent' ? 'acknowledged' : null;
}
