import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { type Answer, ask, read } from './client.js';
import { Problem } from './problem.js';

export interface Reading<T> {
  /** Kept while the same thing is read again, and when that fails. */
  value: T | null;
  etag: string | null;
  problem: Problem | null;
  reading: boolean;
  readAgain(): Promise<void>;
}

/** Reads a path below /api; null reads nothing. */
export function useRead<T>(path: string | null): Reading<T> {
  return useAnswer<T>(path, (of) => read<T>(of));
}

/** Asks a question that changes nothing; null asks nothing. */
export function useQuestion<T>(path: string, question: object | null): Reading<T> {
  const asked = question === null ? null : JSON.stringify(question);
  return useAnswer<T>(asked, (of) => ask<T>(path, of));
}

interface Held<T> {
  of: string | null;
  value: T | null;
  etag: string | null;
  problem: Problem | null;
}

/** Keeps the answer to what was asked last; an answer to an older question is dropped. */
function useAnswer<T>(of: string | null, get: (of: string) => Promise<Answer<T>>): Reading<T> {
  const [held, setHeld] = useState<Held<T>>({ of, value: null, etag: null, problem: null });
  const [reading, setReading] = useState(of !== null);
  const wanted = useRef(of);
  wanted.current = of;
  const getting = useRef(get);
  getting.current = get;
  const readAgain = useCallback(async () => {
    if (of === null) return;
    setReading(true);
    try {
      const { body, etag } = await getting.current(of);
      if (wanted.current === of) setHeld({ of, value: body, etag, problem: null });
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      if (wanted.current === of) setHeld((was) => ({ ...keptOf(was, of), problem: error }));
    } finally {
      if (wanted.current === of) setReading(false);
    }
  }, [of]);
  useEffect(() => {
    void readAgain();
  }, [readAgain]);
  return { ...keptOf(held, of), reading, readAgain };
}

function keptOf<T>(held: Held<T>, of: string | null): Held<T> {
  return held.of === of ? held : { of, value: null, etag: null, problem: null };
}
