/** A small valid card with one step of each kind, and a library that holds it. Invented. */
import type { Card, CardLibraryContent } from './card.js';

export const validCard = (): Card => ({
  id: 'filter',
  title: 'Change of the case-drain filter',
  purpose: 'rectification',
  reference: { manual: 'INV-AMM', task: '29-11-31 task 4', revision: '12', issuedOn: '2026-03-01' },
  entries: ['32-42-01'],
  cautions: ['Depressurise before you open a line.'],
  accounts: [
    { id: 'latches', pair: 'unlatch-latch', what: 'cowl latches', where: 'left nacelle', count: 4 },
    {
      id: 'panel',
      pair: 'open-close',
      what: 'panel 441',
      where: 'left nacelle',
      kind: 'panel-open',
      numbered: true,
      undo: 'close it',
    },
  ],
  steps: [
    { id: 'unlatch', kind: 'out', text: 'Release the latches.', account: 'latches' },
    { id: 'open', kind: 'out', text: 'Open the panel.', account: 'panel' },
    { id: 'cool', kind: 'wait', text: 'Let it cool.', lasts: { shownBy: 'the case temperature page' } },
    { id: 'seal', kind: 'renew', text: 'Renew the seals.', part: 'seal', count: 2, licence: ['B1'] },
    {
      id: 'pressure',
      kind: 'measure',
      text: 'Read the pressure.',
      measure: { id: 'p', what: 'pressure', unit: 'bar', from: 2, to: 3 },
    },
    {
      id: 'leak',
      kind: 'run',
      text: 'Run the pump.',
      lasts: { minutes: 5 },
      readings: [{ id: 'case', what: 'case temperature', unit: 'C', to: 90 }],
      look: 'No drop at the bowl.',
    },
    { id: 'tidy', kind: 'do', text: 'Wipe the bay dry.', after: [] },
    { id: 'look', kind: 'inspect', text: 'Look at seals and bowl.', of: ['seal'], after: ['leak'] },
    { id: 'close', kind: 'in', text: 'Close the panel.', account: 'panel' },
    { id: 'latch', kind: 'in', text: 'Latch.', account: 'latches' },
    { id: 'see', kind: 'verify', text: 'See all latches flush.' },
  ],
});

export const validLibrary = (): CardLibraryContent => ({
  format: 'proviso-cards/1',
  document: 'INV-CARDS',
  operator: 'Invented Air',
  aircraftType: 'INV-1',
  revision: '1',
  effectiveOn: '2026-04-01',
  cards: [validCard()],
});
