export interface SignIn {
  user: string;
  password: string;
  /** The same database when absent. */
  database?: string;
}

/**
 * The address of a database for another user. A socket given as a parameter leaves no host in the address, and without
 * a host an address takes no user: going on as the old one, unnoticed, must not happen.
 * @throws Error when the address names no host
 */
export function addressFor(url: string, { user, password, database }: SignIn): string {
  const address = new URL(url);
  if (address.hostname === '') {
    throw new Error('The database address names no host. Write the socket folder as the host, percent-encoded.');
  }
  address.username = encodeURIComponent(user);
  address.password = encodeURIComponent(password);
  if (database !== undefined) address.pathname = `/${encodeURIComponent(database)}`;
  return address.href;
}

export function passwordIn(url: string): string {
  return decodeURIComponent(new URL(url).password);
}
