import { useSession } from '../session/session.js';
import { readable } from '../words/readable.js';

/** What the server says, with its instants in the time of the base. */
export function Said({ text }: { text: string }) {
  const { operator } = useSession();
  return <>{readable(text, operator.base)}</>;
}
