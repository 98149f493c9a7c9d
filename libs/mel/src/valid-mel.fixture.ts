/** A small valid MEL for the specs of this lib: two entries, one with every part a row may have. Invented. */
import type { MelContent } from './content.js';

/** Content as it stands in a file, so that a spec can spoil any place of it. */

export const validMel = (): MelContent => ({
  format: 'proviso-mel/1',
  document: 'Invented MEL',
  operator: 'Invented operator',
  aircraftType: 'T0',
  revision: '1',
  effectiveOn: '2026-01-01',
  entries: [
    {
      number: '32-42-01',
      title: 'Wheel brakes',
      chapter: '32',
      jasc: '3242',
      words: ['brake'],
      faultMessages: ['BRAKE 3 FAULT'],
      subEntries: [
        {
          id: 'all',
          units: ['1', '2', '3', '4'],
          rows: [
            {
              id: '1',
              category: 'C',
              numberInstalled: 4,
              numberRequired: 3,
              remarks: 'One may be inoperative.',
              provisos: [
                {
                  id: 'a',
                  text: 'Both steering units are operative and the runway is wide.',
                  when: {
                    all: [
                      { fact: 'entry.up', operator: 'greaterThanInclusive', value: 2, params: { entry: '32-51-01' } },
                      { fact: 'flight.runwayWidthMetres', operator: 'greaterThanInclusive', value: 45 },
                    ],
                  },
                },
              ],
              procedures: [
                { id: 'M1', kind: 'M', text: 'Deactivate the brake.', repeat: { every: '100 flight-hours' } },
                { id: 'O1', kind: 'O', text: 'Apply the penalty.' },
              ],
              placard: { text: 'BRAKE INOP', position: 'beside the brake pressure indicator' },
              judgements: [{ id: 'J1', question: 'Is the landing distance accepted?', by: 'commander' }],
              consideredInoperative: [{ entry: '32-51-01', units: ['L'] }],
              notes: [{ text: 'Steering may feel heavy.', lost: [{ entry: '32-51-01' }] }],
            },
          ],
        },
      ],
    },
    {
      number: '32-51-01',
      title: 'Nose wheel steering',
      chapter: '32',
      subEntries: [{ id: 'all', units: ['L', 'R'], rows: [] }],
    },
  ],
});

/** The same, with one place replaced: `spoilt('/entries/0/title', 5)`; `undefined` takes the place away. */
export const spoilt = (pointer: string, value: unknown): unknown => {
  const content: unknown = structuredClone(validMel());
  const steps = pointer.split('/').slice(1);
  const last = steps.pop() ?? '';
  const target = steps.reduce<unknown>((at, step) => (at as Record<string, unknown>)[step], content);
  if (value === undefined) delete (target as Record<string, unknown>)[last];
  else (target as Record<string, unknown>)[last] = value;
  return content;
};
