/** What stands on every export and every printed sheet. */
export const CAUTIONS: readonly string[] = [
  'Proviso supports, and never replaces, the approved MEL, the maintenance manual, the commander and licensed certifying staff. Local regulation prevails.',
  'Electronic signatures and the record are designed to the published guidance on electronic records; nobody has approved them.',
  'The record proves what was written down, by whom and when it was sealed, and that it was not altered since. It does not prove that it is true, nor that nothing else happened.',
];
