/** How an acceptance stands among the answers of named persons. */
export const ACCEPTANCE = 'flight-acceptance';
