import type { AuthorityGranted } from '#deferrals';

/** What an authority allows beyond the deadline, shown as its document. */
export function documentLine(act: AuthorityGranted) {
  const { document, limit, conditions, from, until, flights, kindsOfFlight, by, enteredAt } = act;
  return {
    words: `${document.kind === 'permit' ? 'permit' : 'authority document'} ${document.number}`,
    authority: document.authority,
    limit,
    conditions: [...conditions],
    from,
    until,
    flights,
    kindsOfFlight,
    enteredBy: by.name,
    enteredAt,
  };
}
