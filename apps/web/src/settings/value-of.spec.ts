import { expect, it } from 'vitest';
import { sentOf, typedOf } from './value-of.js';

it('sends what its kind of setting takes', () => {
  expect(sentOf('yes-no', 'yes')).toBe(true);
  expect(sentOf('yes-no', 'no')).toBe(false);
  expect(sentOf('whole', ' 60 ')).toBe(60);
  expect(sentOf('whole', 'sixty')).toBe('sixty');
  expect(sentOf('codes', 'QVR QHT, QDM')).toEqual(['QVR', 'QHT', 'QDM']);
  expect(sentOf('some-of', '50 %, at the end')).toEqual(['50 %', 'at the end']);
  expect(sentOf('some-of', 'B')).toEqual(['B']);
  expect(sentOf('codes', '')).toEqual([]);
  expect(sentOf('zone', ' Europe/Paris')).toBe('Europe/Paris');
});

it('shows what is sent as it can be sent again', () => {
  expect([null, true, 60, 'block', ['QVR', 'QHT']].map(typedOf)).toEqual(['', 'yes', '60', 'block', 'QVR, QHT']);
});
