/** Signing on anew in a window of its own, so that what was typed into the form stays where it is. */
import { carryOut, freshKey, type Schemas } from '../api/client.js';
import { Problem } from '../api/problem.js';

const CHANNEL = 'proviso-sign-on';
const LONGEST_WAIT_MS = 5 * 60_000;

interface Said {
  id?: string;
  problem?: string;
}

/** Opens the window at once, inside the press of the button: later a browser would not. Throws Problem. */
export async function freshSignOn(statement: string): Promise<string> {
  const opened = window.open('', CHANNEL, 'popup,width=520,height=640');
  try {
    const begun = await carryOut<Schemas['SignOnBegun']>(
      { method: 'POST', path: '/sign-on/signature', body: { statement } },
      freshKey(),
    );
    if (opened) opened.location.href = begun.body.address;
    const { id } = await heard();
    if (id !== undefined) return id;
  } finally {
    opened?.close();
  }
  throw new Problem(0, {
    title: 'The fresh sign-on did not prove that it is you, so nothing was signed',
    next: 'Try again, and sign on with your own account.',
  });
}

/** Told by the page that the sign-on ends at. */
export function tell(said: Said): void {
  const channel = new BroadcastChannel(CHANNEL);
  channel.postMessage(said);
  channel.close();
}

function heard(): Promise<Said> {
  return new Promise((resolve) => {
    const channel = new BroadcastChannel(CHANNEL);
    const end = (said: Said): void => {
      clearTimeout(waiting);
      channel.close();
      resolve(said);
    };
    const waiting = setTimeout(() => end({}), LONGEST_WAIT_MS);
    channel.onmessage = ({ data }: MessageEvent<Said>) => end(data);
  });
}
