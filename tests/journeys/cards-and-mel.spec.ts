/**
 * An MEL and a library of work cards are loaded one after the other. What one drops and the other still names is told by
 * name at the load and on the list of cards; what would be read two ways is refused; work under way goes on by its text.
 */
import { readFileSync } from 'node:fs';
import { parse, stringify } from 'yaml';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CardLibraryContent, MelContent } from '#mel';
import type { Shapes } from '../support/api-client.js';
import { act, CardsScene } from './cards-scene.js';

let scene: CardsScene;

beforeAll(async () => {
  scene = await CardsScene.begin('2026-01-15T12:12:00.000Z', ['odrin', 'mabbet']);
});

afterAll(() => scene.stop());

const seed = (file: string): unknown => parse(readFileSync(new URL(`../../seed/${file}`, import.meta.url), 'utf8'));
const mel = (revision: string): MelContent => ({ ...(seed('mel.yaml') as MelContent), revision });
const library = (revision: string): CardLibraryContent => ({
  ...(seed('cards.yaml') as CardLibraryContent),
  revision,
});
const body = (file: string, content: object) => ({ file, text: stringify(content) });

const astray = async () => (await scene.person('odrin').get<Shapes['CardList']>('/api/cards')).warnings;

/** The MEL as if the pump's entry had never been in it. */
function withoutPump(revision: string): MelContent {
  const content = mel(revision);
  return { ...content, entries: content.entries.filter(({ number }) => number !== '29-13-11') };
}

describe('an MEL that drops what the library names', () => {
  let defect: string;
  let work: string;

  it('comes into force, and names the card, and the card that is under way', async () => {
    ({ defect, work } = await scene.started('Q-KEA'));
    const loaded = await scene
      .person('mabbet')
      .post<Shapes['MelLoaded']>('/api/mel', body('mel.yaml', withoutPump('90')));
    expect(loaded.body.warnings).toEqual([
      '"Case-drain filter of the electric hydraulic pump changed" is for 29-13-11, which the MEL does not hold, so it is offered nowhere',
      ...APU_LEFT,
      expect.stringMatching(
        /^Q-KEA\/\d+: card "Case-drain filter .*" is under way, and the MEL has no entry 29-13-11: it goes on by the text with which it began$/,
      ),
    ]);
  });

  it('is named in the list of cards until one of them is mended', async () => {
    expect(await astray()).toMatchObject([
      { aircraftType: 'Kellwing', card: 'case-drain-filter' },
      ...APU_LEFT.map(() => ({ card: 'apu-removal' })),
    ]);
  });

  it('leaves the card under way as it began', async () => {
    await act(scene.person('odrin'), defect, 'card-steps', { work, step: 'zero', result: 'done' });
    const view = await scene.person('odrin').get<Shapes['CardWorkView']>(`/api/defects/${defect}/cards/${work}`);
    expect(view.work.steps.filter(({ state }) => state === 'done').map(({ id }) => id)).toEqual(['zero']);
  });

  it('is held against a library that comes later, which is refused while it names the entry', async () => {
    const refused = await scene
      .person('mabbet')
      .refused('POST', '/api/cards', { body: body('cards.yaml', library('8')) });
    expect(refused.errors).toEqual([
      { pointer: '/cards/0/entries/0', reason: 'there is no entry "29-13-11" in the MEL', card: 'case-drain-filter' },
    ]);
  });
});

describe('a library that drops cards', () => {
  it('comes into force, and names each, the one under way, and what nothing undoes any more', async () => {
    const content = library('9');
    const drop = ['case-drain-filter', 'brake-reconnect'];
    const cards = content.cards.filter(({ id }) => !drop.includes(id));
    const loaded = await scene
      .person('mabbet')
      .post<Shapes['CardsLoaded']>('/api/cards', body('cards.yaml', { ...content, cards }));
    expect(loaded.body.warnings).toEqual([
      expect.stringContaining('"One wheel brake isolated" leaves brake line of the wheel concerned'),
      ...APU_LEFT,
      '"Case-drain filter of the electric hydraulic pump changed" stood in the library before and is no longer offered',
      '"Wheel brake connected again" stood in the library before and is no longer offered',
      expect.stringMatching(/^Q-KEA\/\d+: card "Case-drain filter .* and the library has no such card: it goes on/),
    ]);
  });
});

describe('a card that both would have', () => {
  const shared = 'one of them needs another id';

  it('is refused in a library, and in an MEL, with its place', async () => {
    const cards = library('10').cards.filter(({ id }) => id !== 'case-drain-filter');
    const twice = { ...cards[0]!, id: 'pack-lock' };
    const one = await scene.person('mabbet').refused('POST', '/api/cards', {
      body: body('cards.yaml', { ...library('10'), cards: [twice] }),
    });
    expect(one.errors).toEqual([
      { pointer: '/cards/0/id', reason: `the MEL has a card "pack-lock" too: ${shared}`, card: 'pack-lock' },
    ]);
    const content = mel('91');
    const also = { ...content.cards![0]!, id: 'pack-unlock' };
    const other = await scene.person('mabbet').refused('POST', '/api/mel', {
      body: body('mel.yaml', { ...content, cards: [also, ...content.cards!] }),
    });
    expect(other.errors).toEqual([
      {
        pointer: '/cards/0/id',
        reason: `the library of cards has a card "pack-unlock" too: ${shared}`,
        card: 'pack-unlock',
      },
    ]);
  });
});

/** The demo's APU is fitted again by the manual, not by a card. */
const APU_LEFT = [
  'APU at tail cone, APU',
  'fuel, bleed and drain lines at tail cone, fuel, bleed and drain lines',
].map((what) => `"APU removed" leaves ${what}, and no card of the library undoes it: it is undone at the item`);
