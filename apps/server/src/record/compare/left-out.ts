/**
 * Tables that no record tells row by row, each with the reason. Every other table of the schema is held against the
 * record; a test lists the schema.
 */
export const LEFT_OUT: Readonly<Record<string, string>> = {
  erasure: 'keys of those who were erased, for the list outside; each erasure itself is recorded',
  past_keeping: 'what is past its period, worked out from what was closed and who left; noted once',
  person: 'names and licence numbers can be erased, so the record knows a person by reference alone',
  credential: 'means to sign in are never recorded and go with the person; each signature tells how it was proved',
  passkey: 'as credential',
  sign_on_identity: 'as credential',
  challenge: 'asked and answered within minutes',
  session: 'ends by itself; each signature tells in which session it was given',
  sign_in_attempt: 'a count that goes back to nothing; failed attempts themselves are recorded',
  failed_attempt: 'a number for its owner, until seen; failed attempts themselves are recorded',
  idempotency: 'answers kept for requests that are sent again',
  reminder: 'what is to be sent, worked out from deadlines and addresses; each is noticed once',
  record_entry: 'is the record: checked by proviso record verify',
  record_pending: 'is the record, not yet sealed',
  record_sealed: 'is the record',
  tree_head: 'is the record',
  tree_frontier: 'is the record',
  signed_head: 'is the record',
  migration: 'the state of the schema, not of an operator',
};

/** Built by the rules from acts and entries, and not told row by row. */
export const REBUILT: readonly string[] = [
  'defect',
  'defect_act',
  'register_act',
  'left_item',
  'signature',
  'leg',
  'movement_delivery',
  'movement_message',
];
