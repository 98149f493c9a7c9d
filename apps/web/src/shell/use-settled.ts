import { useEffect, useState } from 'preact/hooks';

const WAIT_MS = 250;

/** What was typed, once nothing more was typed for a moment. */
export function useSettled(typed: string): string {
  const [settled, setSettled] = useState(typed);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(typed), WAIT_MS);
    return () => clearTimeout(timer);
  }, [typed]);
  return settled;
}
