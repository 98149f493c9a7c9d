import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Schemas } from '../api/client.js';

export type SessionView = Schemas['SessionView'];

/** Who is signed in, for the operator chosen. */
export interface Signed {
  person: SessionView['person'];
  operator: NonNullable<SessionView['operator']>;
  operators: SessionView['operators'];
  roles: string[];
  /** By which means this person may sign. */
  means: SessionView['means'];
  /** How often somebody tried this person's name in vain, until the person says that it was seen. */
  failedAttempts: number;
  /** Reads the session again: after signing out, or choosing another operator. */
  readAgain(): Promise<void>;
}

export const SessionContext = createContext<Signed | null>(null);

export function useSession(): Signed {
  const signed = useContext(SessionContext);
  if (signed === null) throw new Error('This page is shown only to somebody signed in.');
  return signed;
}
