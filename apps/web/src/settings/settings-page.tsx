import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Cell } from '../shell/cell.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';

type Line = Schemas['SettingLine'];

const MAY_CHANGE = ['quality', 'administrator'];

export const mayChangeSettings = (roles: readonly string[]): boolean =>
  roles.some((role) => MAY_CHANGE.includes(role));

/** Everything that the operator settles: the value in force, that of the preset with its source, its own with the reason. */
export function SettingsPage() {
  const { operator, roles } = useSession();
  const view = useRead<Schemas['SettingsView']>('/settings');
  const mayChange = mayChangeSettings(roles);
  return (
    <Page title="Settings" aside={view.value && `as of ${withOffset(view.value.at, operator.base)}`}>
      <Read of={view}>
        {({ preset, settings }) => (
          <>
            <p>
              Preset: <strong>{preset}</strong>. {mayChange && <a href="/settings/preset">Choose another</a>}
            </p>
            <p class="soft">
              Beside each value stands where the preset has it from, and how well that is known. What was signed keeps
              the deadline it was signed with, whatever is changed here.
            </p>
            <Table settings={settings} mayChange={mayChange} />
          </>
        )}
      </Read>
    </Page>
  );
}

function Table({ settings, mayChange }: { settings: readonly Line[]; mayChange: boolean }) {
  return (
    <table class="stack">
      <thead>
        <tr>
          <th scope="col">Setting</th>
          <th scope="col">In force</th>
          <th scope="col">Preset and source</th>
        </tr>
      </thead>
      <tbody>
        {settings.map((line) => (
          <tr key={line.key}>
            <th scope="row">
              {mayChange ? <a href={`/settings/${line.key}`}>{line.title}</a> : line.title}
              <span class="soft block">{line.about}</span>
              {line.kept && <span class="soft block">Kept for the record. {line.kept}</span>}
            </th>
            <Cell head="In force">
              <strong>{line.words}</strong>
              {line.own && <span class="soft block">our own: {line.own.reason || 'no reason was recorded'}</span>}
            </Cell>
            <Cell head="Preset">
              {line.preset.words}
              <span class="soft block">
                {line.preset.source} ({line.preset.mark})
              </span>
            </Cell>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
