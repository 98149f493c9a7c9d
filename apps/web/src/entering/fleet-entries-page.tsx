import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { AircraftEntry } from './aircraft-entry.js';
import { AircraftForm } from './aircraft-form.js';

type Entries = Schemas['AircraftEntries'];

const MAY_ENTER = ['administrator', 'engineer'];

/** The aircraft of the operator as they were entered: what the MEL asks of each, and who left the fleet. */
export function FleetEntriesPage() {
  const entries = useRead<Entries>('/aircraft');
  const { roles } = useSession();
  const may = roles.some((role) => MAY_ENTER.includes(role));
  return (
    <Page title="Aircraft" back={{ href: '/control', text: 'Fleet' }}>
      <Read of={entries}>
        {(view) => (
          <>
            {may && <AircraftForm view={view} entered={entries.readAgain} />}
            {view.aircraft.length === 0 && <p>No aircraft has been entered.</p>}
            <ul class="plain-list cards">
              {view.aircraft.map((one) => (
                <li key={one.id} class="card">
                  <AircraftEntry entry={one} view={view} may={may} changed={entries.readAgain} />
                </li>
              ))}
            </ul>
          </>
        )}
      </Read>
    </Page>
  );
}
