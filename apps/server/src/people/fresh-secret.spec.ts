import { describe, expect, it } from 'vitest';
import { misfitOfSecret } from './fresh-secret.js';

const about = ['odrin', 'Odrin Vask', 'Vask'];

describe('a new secret', () => {
  it.each(['copper lantern meadow', 'Zwölf Äpfel im Korb', '🦊🦉🐢🦎🐝🦂🐍🦕🐙🦑🦞🦀', 'tR7-kk2-Qm9-xx4'])(
    'may be %s',
    (secret) => {
      expect(misfitOfSecret(secret, about)).toBeNull();
    },
  );

  it.each([
    ['elevenchars', /shorter than 12/],
    ['aaaaaaaaaaaaaaaa', /guessed first/],
    ['123123123123123', /guessed first/],
    ['passwordpassword', /guessed first/],
    ['Proviso-Secret-1', /guessed first/],
    ['odrinvaskodrin', /guessed first/],
  ])('is never %s', (secret, why) => {
    expect(misfitOfSecret(secret, about)).toMatch(why);
  });
});
