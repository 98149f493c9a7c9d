import { EntitySchema } from 'typeorm';
import { id, instant, nullable, text } from './column.js';
import { to, toMember } from './foreign-key.js';

/** One sign-in, from its start until it is ended or expires. The token itself is never kept, only its hash. */
export interface SessionRow {
  /** SHA-256 of the token, as 64 hex digits. */
  tokenHash: string;
  /** What a signature names as the sign-in it leads back to. */
  id: string;
  personId: string;
  /** Null until the person has chosen for whom to work. */
  operatorId: string | null;
  createdAt: string;
  expiresAt: string;
}

export const SessionTable = new EntitySchema<SessionRow>({
  name: 'session',
  columns: {
    tokenHash: text({ primary: true }),
    id: id(),
    personId: id(),
    operatorId: id(nullable),
    createdAt: instant(),
    expiresAt: instant(),
  },
  uniques: [{ name: 'session_id', columns: ['id'] }],
  indices: [{ name: 'session_of_person', columns: ['personId'] }],
  checks: [{ name: 'session_token_hash', expression: "token_hash ~ '^[0-9a-f]{64}$'" }],
  foreignKeys: [to('session_person', 'person', 'personId'), toMember('session_membership', 'personId')],
});
