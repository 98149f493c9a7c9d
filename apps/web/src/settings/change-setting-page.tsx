import { useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { Choice, Field } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { SettleForm } from './settle-form.js';
import { type Sent, sentOf, typedOf } from './value-of.js';

type Line = Schemas['SettingLine'];

const PRESETS = ['easa', 'faa', 'tcca-2006', 'tcca-2022', 'custom'];

/** One setting is given another value: first what would read otherwise is shown, then it is settled. */
export function ChangeSettingPage() {
  const { key = '' } = useRoute().params;
  const view = useRead<Schemas['SettingsView']>('/settings');
  return (
    <Page title="Change a setting" back={{ href: '/settings', text: 'Settings' }}>
      <Read of={view}>
        {({ preset, settings }) => {
          const line = key === 'preset' ? presetLine(preset) : settings.find((one) => one.key === key);
          return line === undefined ? (
            <p>There is no setting {key}.</p>
          ) : (
            <Change key={`${key} ${view.etag}`} line={line} seen={view.etag} />
          );
        }}
      </Read>
    </Page>
  );
}

type Changing = Pick<Line, 'key' | 'title' | 'about' | 'kept' | 'takes' | 'choices' | 'value' | 'words'> & {
  own: object | null;
};

function presetLine(preset: string): Changing {
  return {
    key: 'preset',
    title: 'Preset',
    about: 'Whose rules count where the operator settled nothing itself.',
    kept: null,
    takes: 'choice',
    choices: PRESETS.map((value) => ({ value, words: value })),
    value: preset,
    words: preset,
    own: null,
  };
}

interface Asked {
  key: string;
  value: Sent;
  reason: string;
}

function Change({ line, seen }: { line: Changing; seen: string | null }) {
  const [typed, setTyped] = useState(typedOf(line.value));
  const [reason, setReason] = useState('');
  const [asked, setAsked] = useState<Asked | null>(null);

  function show(value: Sent): void {
    if (reason.trim() !== '') setAsked({ key: line.key, value, reason });
  }

  return (
    <>
      <h2>{line.title}</h2>
      <p>{line.about}</p>
      {line.kept && <p class="soft">Kept for the record. {line.kept}</p>}
      <p>
        Now: <strong>{line.words}</strong>
      </p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          show(sentOf(line.takes, typed));
        }}
      >
        <Value line={line} typed={typed} onTyped={setTyped} />
        <Field label="Why" value={reason} onValue={setReason} lines={2} most={1000} required />
        <div class="buttons">
          <button>Show what would read otherwise</button>
          {line.own !== null && (
            <button type="button" onClick={() => show(null)}>
              Show it with the value of the preset
            </button>
          )}
        </div>
      </form>
      {asked && <SettleForm key={JSON.stringify(asked)} changes={[asked]} seen={seen} />}
    </>
  );
}

function Value({ line, typed, onTyped }: { line: Changing; typed: string; onTyped(typed: string): void }) {
  const options =
    line.takes === 'yes-no'
      ? ['yes', 'no'].map((value) => ({ value, text: value }))
      : line.takes === 'choice'
        ? (line.choices ?? []).map(({ value, words }) => ({ value, text: words }))
        : null;
  if (options !== null)
    return <Choice legend="From now on" options={options} value={typed} onValue={(value) => onTyped(value)} />;
  const known = line.choices?.map(({ value }) => value).join(', ');
  const hint = line.takes === 'some-of' ? `Some of: ${known ?? ''}. Commas between them.` : undefined;
  return <Field label="From now on" hint={hint} value={typed} onValue={onTyped} most={1200} />;
}
