const ROW = {
  category: 'A',
  interval: '125 engine-hours or 40 engine-cycles',
  numberInstalled: 2,
  numberRequired: 0,
  remarks: 'One or both may be inoperative.',
};
/** An invented MEL with an item of one engine, and one whose interval is calendar days. */
export const ENGINES_MEL = {
  format: 'proviso-mel/1',
  document: 'Invented MEL',
  operator: 'nobody',
  aircraftType: 'T1',
  revision: '1',
  effectiveOn: '2026-01-01',
  entries: [
    {
      number: '73-21-01',
      title: 'Engine control channel',
      chapter: '73',
      subEntries: [{ id: 'all', units: ['1', '2'], rows: [{ id: '1', ...ROW }] }],
    },
    {
      number: '33-42-01',
      title: 'Landing light',
      chapter: '33',
      subEntries: [{ id: 'all', units: ['1', '2'], rows: [{ ...ROW, id: '1', category: 'C', interval: undefined }] }],
    },
  ],
};
