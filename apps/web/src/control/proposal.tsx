import type { Schemas } from '../api/client.js';
import { Said } from '../shell/said.js';
import { minutesWords } from '../words/words.js';

type SwapProposal = Schemas['SwapProposal'];

/** What came of looking for an exchange: who flies what, or which flights nobody can cover and why. */
export function Proposal({ proposal }: { proposal: SwapProposal }) {
  const { because, assignments = [], flights = [] } = proposal;
  return (
    <section class="card" aria-label="The proposal">
      <h2>
        <Said text={because} />
      </h2>
      {assignments.length > 0 && (
        <ul class="plain-list">
          {assignments.map((one) => (
            <Assignment key={one.rotation} assignment={one} />
          ))}
        </ul>
      )}
      {flights.length > 0 && (
        <ul class="plain-list">
          {flights.map(({ flight, because: reasons, couldBe }) => (
            <li key={flight}>
              <span class="strong">
                <Said text={flight} />
              </span>
              {reasons.map((reason) => (
                <span class="block" key={reason}>
                  <Said text={reason} />
                </span>
              ))}
              {couldBe.length > 0 && (
                <span class="block soft">{couldBe.join(', ')} could, but cannot fly the others as well.</span>
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Assignment({ assignment }: { assignment: NonNullable<SwapProposal['assignments']>[number] }) {
  const { aircraft, planned, flights, minutes } = assignment;
  return (
    <li>
      <span class="strong">{aircraft}</span>{' '}
      {aircraft === planned ? 'keeps its own flights' : `takes over the flights of ${planned}`}
      <span class="block soft">
        From <Said text={flights[0] ?? ''} /> on, {flights.length === 1 ? 'one flight' : `${flights.length} flights`}.{' '}
        {minutes === 0 ? 'No work is outstanding.' : `Outstanding work: ${minutesWords(minutes)}.`}
      </span>
    </li>
  );
}
