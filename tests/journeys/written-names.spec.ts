/** What is said to have been looked for was looked for: a name of two short words, and one that is written otherwise. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { CardsScene } from './cards-scene.js';

let scene: CardsScene;
let address: string;

beforeAll(async () => {
  scene = await CardsScene.begin('2026-01-15T12:12:00.000Z', ['odrin', 'ulla']);
  const asked = { name: 'Li  Wu', signInName: 'lantern', licence: 'QX.66.90001', roles: ['technician'] };
  const { body } = await scene.person('ulla').post<Shapes['AccountMade']>('/api/people', asked);
  address = `/api/people/${body.person.id}/written-names`;
});

afterAll(() => scene.stop());

const names = () => scene.person('ulla').get<Shapes['WrittenNames']>(address);

it('a name that stands nowhere is said to stand nowhere, with the words that were looked for', async () => {
  const { places, words, says } = await names();
  expect(words).toEqual(['Li Wu', 'QX.66.90001', 'lantern']);
  expect([places, says]).toEqual([[], expect.stringContaining('they stand in none')]);
});

it('a name of two short words is found as a whole, and its short parts alone are not', async () => {
  const stopped = async (registration: string, reason: string) => {
    const { defect, work } = await scene.started(registration);
    await scene.person('odrin').sign(defect, 'card-stops', { act: 'card-stop', work }, { work, reason });
    return defect;
  };
  const defect = await stopped('Q-KEA', 'Asked for by li wu.');
  await stopped('Q-KEO', 'Li-ion, Wu 7.');
  expect((await names()).places).toMatchObject([{ page: `/defects/${defect}` }]);
});

it('no word at all is found nowhere, and not everywhere', async () => {
  const { store } = scene.scene.server;
  const [operator] = await store.operatorsServed();
  const found = await store.withOperator(operator?.id ?? '', null, (tx) =>
    tx.freeText.mentioning([], '00000000-0000-4000-8000-000000000000', 5),
  );
  expect(found).toEqual([]);
});
