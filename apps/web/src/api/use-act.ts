import { useRef, useState } from 'preact/hooks';
import { type Act, type Answer, carryOut, freshKey } from './client.js';
import { Problem } from './problem.js';

export interface Acting {
  /**
   * @param act or how to come by it, where something is asked of the person first
   * @returns null when it was refused: `problem` says why
   */
  send<T>(act: Act | (() => Promise<Act>)): Promise<Answer<T> | null>;
  sending: boolean;
  problem: Problem | null;
}

/** Sends the acts of one form. Its key stays the same until one is done, so that sending again does nothing twice. */
export function useAct(): Acting {
  const key = useRef<string | null>(null);
  const busy = useRef(false);
  const [sending, setSending] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);

  async function send<T>(act: Act | (() => Promise<Act>)): Promise<Answer<T> | null> {
    if (busy.current) return null;
    busy.current = true;
    key.current ??= freshKey();
    setSending(true);
    try {
      const answer = await carryOut<T>(typeof act === 'function' ? await act() : act, key.current);
      key.current = null;
      setProblem(null);
      return answer;
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      setProblem(error);
      return null;
    } finally {
      busy.current = false;
      setSending(false);
    }
  }

  return { send, sending, problem };
}
