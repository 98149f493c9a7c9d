/** The second person of a step, as it is read afterwards: who only was named is not said to have signed. */
import { expect, it } from 'vitest';
import type { Actor, Signature } from '#deferrals';
import { secondInHistory } from './words-of-card-act.js';

const named: Actor = {
  person: 'wick',
  name: 'Wick Straddock',
  role: 'technician',
  organisation: { name: 'Line', approval: 'QX-1' },
};

it('says of a second person that they signed only where they did', () => {
  expect(secondInHistory(named)).toBe('Wick Straddock');
  const signature = { ...named, authorisation: { number: 'QOF-L-026' } } as Signature;
  expect(secondInHistory(signature)).toBe('Wick Straddock, who signed');
});
