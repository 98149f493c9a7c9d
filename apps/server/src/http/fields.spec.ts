/** What comes in is written in one way before any rule compares it. */
import 'reflect-metadata';
import { plainToInstance } from 'class-transformer';
import { validateSync } from 'class-validator';
import { expect, it } from 'vitest';
import { Id, Ids } from './fields.js';

class Naming {
  @Id({ description: 'One.' })
  one!: string;

  @Ids(3, { description: 'Several.' })
  several!: string[];
}

const SMALL = 'a0eebc99-9c0b-4ef8-bb6d-6bb9bd380a11';
const read = (given: object) => {
  const naming = plainToInstance(Naming, given);
  return { naming, wrong: validateSync(naming).map(({ property }) => property) };
};

it('an id in capitals is the same id: who is named by it is the same person', () => {
  const { naming, wrong } = read({ one: SMALL.toUpperCase(), several: [SMALL.toUpperCase()] });
  expect(wrong).toEqual([]);
  expect(naming).toEqual({ one: SMALL, several: [SMALL] });
});

it('an id named twice is named twice however it is written', () => {
  expect(read({ one: SMALL, several: [SMALL, SMALL.toUpperCase()] }).wrong).toEqual(['several']);
});

it('what is no id stays none', () => {
  for (const one of ['x', 7, null, [SMALL], { id: SMALL }, `${SMALL} `, undefined]) {
    expect(read({ one, several: [] }).wrong, JSON.stringify(one)).toEqual(['one']);
  }
});
