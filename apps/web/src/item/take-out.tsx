import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { placardsOf } from './work-address.js';

/** Who may take whole histories, with the names in them, out of the house. */
const MAY_EXPORT = ['quality', 'engineer', 'maintenance-control', 'administrator'];

/**
 * Files to save or print: placards for whoever fits them, whole histories for whoever may take them out. Each link
 * names its file, or the router would take it for a page.
 */
export function TakeOut({ of, placards }: { of: string; placards?: Schemas['DefectLine'] }) {
  const { roles } = useSession();
  const mayExport = roles.some((role) => MAY_EXPORT.includes(role));
  const asksForPlacards = placards !== undefined && placardsOf(placards).length > 0;
  if (!mayExport && !asksForPlacards) return null;
  return (
    <section>
      <h2>To print or to keep</h2>
      <div class="buttons">
        {asksForPlacards && (
          <>
            <a class="button" href={`/api${of}/placards.pdf?size=a4`} download="placards.pdf">
              Placards on A4
            </a>
            <a class="button" href={`/api${of}/placards.pdf?size=roll`} download="placards.pdf">
              Placards on a 62 mm roll
            </a>
          </>
        )}
        {mayExport && (
          <>
            <a class="button" href={`/api${of}/history.pdf`} download="history.pdf">
              Whole history as PDF
            </a>
            <a class="button" href={`/api${of}/history.json`} download="history.json">
              Whole history with proofs
            </a>
          </>
        )}
      </div>
    </section>
  );
}
