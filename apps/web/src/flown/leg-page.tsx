import { useLocation, useRoute } from 'preact-iso';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { carryOver } from '../shell/announce.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { changedLines } from './changed.js';
import { LegForm } from './leg-form.js';

/** A leg entered by hand, or corrected: what a person says stands until a person changes it. */
export function LegPage() {
  const { id = '', leg = '' } = useRoute().params;
  const { route } = useLocation();
  const legs = useRead<Schemas['AircraftLegs']>(`/aircraft/${id}/legs`);
  const isNew = leg === 'enter';

  function done(written: Schemas['LegWritten']): void {
    const { flight, ending } = written.leg;
    const what = ending === 'withdrawn' ? 'is withdrawn' : isNew ? 'is entered' : 'is corrected';
    carryOver({ title: `${flight} ${what}.`, lines: changedLines(written) });
    route(`/aircraft/${id}/flown`);
  }

  return (
    <Page
      title={isNew ? 'Enter a leg by hand' : 'Correct a leg'}
      aside={legs.value?.registration}
      back={{ href: `/aircraft/${id}/flown`, text: 'Flown' }}
    >
      <Read of={legs}>
        {(view) => {
          const of = view.legs.find((one) => one.id === leg) ?? null;
          if (!isNew && of === null) return <p>There is no such leg in the last thirty days.</p>;
          return <LegForm aircraft={id} of={of} done={done} readAgain={() => void legs.readAgain()} />;
        }}
      </Read>
    </Page>
  );
}
