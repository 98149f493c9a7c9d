import type { Schemas } from '../api/client.js';
import { Said } from '../shell/said.js';
import { sentence } from '../words/readable.js';
import { useSession } from '../session/session.js';
import { JudgementForm } from './judgement-form.js';

interface CombinationProps {
  verdict: Schemas['Verdict'];
  aircraft: string;
  given(): void;
}

/** Several open items together: a named person of maintenance control judges them, and may judge them anew. */
export function Combination({ verdict, aircraft, given }: CombinationProps) {
  const { roles } = useSession();
  const gate = verdict.gates.find((one) => one.gate === 'combination');
  const asked = verdict.questions.some(({ fact }) => fact === 'judgement.accepted[combination]');
  if (!gate) return null;
  if (asked) {
    return gate.found === undefined ? null : (
      <section>
        <h2>The combination of open items</h2>
        <Found found={gate.found} />
      </section>
    );
  }
  return (
    <section>
      <h2>The combination of open items</h2>
      <p>
        <Said text={sentence(gate.because)} />
      </p>
      <Found found={gate.found ?? []} />
      {roles.includes('maintenance-control') && (
        <details>
          <summary>Judge it anew</summary>
          <JudgementForm
            aircraft={aircraft}
            flight={verdict.flight}
            judgement="combination"
            question="May these open items be flown together?"
            given={given}
          />
        </details>
      )}
    </section>
  );
}

/** For the person who judges: shared systems, what the rows ask of the crew, their notes. */
function Found({ found }: { found: readonly string[] }) {
  if (found.length === 0) return null;
  return (
    <ul class="plain-list">
      {found.map((one) => (
        <li key={one}>
          <Said text={one} />
        </li>
      ))}
    </ul>
  );
}
