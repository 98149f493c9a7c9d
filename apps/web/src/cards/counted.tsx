import type { Schemas } from '../api/client.js';

type Account = Schemas['CardAccount'];

const words = ({ state, outWord, inWord, number }: Account): string => {
  if (state === 'not-yet') return 'not yet touched';
  if (state === 'in') return inWord;
  return `${state === 'stays' ? `${outWord}, and so it stays` : outWord.toUpperCase()}${number === null ? '' : ` (${number})`}`;
};

const isOut = ({ state }: Account): boolean => state === 'out';

/** What the card opens, pulls and fits, counted out and in: what is still out first. */
export function Counted({ accounts }: { accounts: readonly Account[] }) {
  if (accounts.length === 0) return null;
  const out = accounts.filter(isOut);
  const inOrder = [...out, ...accounts.filter((account) => !isOut(account))];
  return (
    <section>
      <h2>Counted out: {out.length} still to be counted in</h2>
      <ul class="plain-list">
        {inOrder.map((account) => (
          <li key={account.id}>
            <span class={isOut(account) ? 'strong' : undefined}>
              {account.count === 1 ? '' : `${account.count} `}
              {account.what}: {words(account)}
            </span>
            <span class="soft block">{account.where}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
