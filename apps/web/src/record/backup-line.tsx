import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';
import { agoWords } from './age-line.js';

interface BackupLineProps {
  backup: Schemas['RecordState']['backup'];
}

/** The last backup, and since when something stands in none: that counts, not the age of the file. */
export function BackupLine({ backup }: BackupLineProps) {
  const { operator } = useSession();
  const { made, hours, unsavedSince, unsavedHours, atMostHours, old } = backup;
  if (made === null || hours === null) {
    return (
      <p>
        <span class="state heavy">missing</span> Last backup. Have one made on the server: proviso backup --to FILE.
      </p>
    );
  }
  return (
    <p>
      {old && <span class="state heavy">old</span>} Last backup: {withOffset(made, operator.base)}, {agoWords(hours)}.{' '}
      {unsavedSince === null || unsavedHours === null
        ? 'Nothing was entered since.'
        : `The oldest entry in no backup was made ${agoWords(unsavedHours)}.`}
      {old && <strong> At most {atMostHours} hours are allowed: have one made now.</strong>}
    </p>
  );
}
