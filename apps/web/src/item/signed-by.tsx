import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';
import { methodWords, roleWords } from '../words/words.js';

/** Who signed: on every page and print the name, the licence, the role, the time with its offset, and the form. */
export function SignedBy({ by }: { by: Schemas['SignedBy'] }) {
  const { operator } = useSession();
  return (
    <>
      Signed by {by.by}, {roleWords(by.role)}, {by.organisation}, licence {by.licence}, authorisation{' '}
      {by.authorisation}, {withOffset(by.signedAt, operator.base)}, {methodWords(by.method)}
    </>
  );
}
