/** What may be left altered on an aircraft. */
export type LeftKind =
  | 'breaker'
  | 'lock-pin'
  | 'valve-position'
  | 'connector-capped'
  | 'panel-open'
  | 'equipment-removed'
  | 'placard'
  | 'tool';
