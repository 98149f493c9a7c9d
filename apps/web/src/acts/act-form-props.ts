import type { Schemas } from '../api/client.js';

/** What every form of an act on an item gets. */
export interface ActFormProps {
  view: Schemas['DefectView'];
  /** ETag of the item as it was read. */
  seen: string | null;
  /** Goes back to the item, with what was done. */
  done(title: string): void;
  readAgain(): void;
}
