import type { MovementElement } from './element.js';
import { readDelayDetails, readDelays } from './read-delay.js';
import { readTimeGroup, readTimePair, timePattern, Unreadable } from './time-group.js';

interface ElementReader {
  /** What follows the identifier, up to a blank or the end of the line. */
  pattern: RegExp;
  read: (groups: (string | undefined)[]) => MovementElement;
}

const pair = new RegExp(`(?:(${timePattern})(?:/(${timePattern}))?|/(${timePattern}))`, 'y');
const single = new RegExp(`(${timePattern})`, 'y');
const withDay = /(\d{6})/y;
const expectedAirport = new RegExp(`(${timePattern})(?: +([A-Z]{3})(?![^ ]))?`, 'y');
const anything = /(\S+)/y;

const times = (kind: 'AD' | 'AA' | 'FR'): ElementReader => ({
  pattern: pair,
  read: ([first, second, alone]) => ({ kind, times: readTimePair(first, second ?? alone) }),
});
const time = (kind: 'RR' | 'ED' | 'NI' | 'EO' | 'EB', pattern: RegExp): ElementReader => ({
  pattern,
  read: ([group = '']) => ({ kind, time: readTimeGroup(group) }),
});
const delays = (kind: 'DL' | 'EDL'): ElementReader => ({
  pattern: anything,
  read: ([text = '']) => ({ kind, delays: readDelays(text) }),
});
const kept = (kind: 'RC' | 'CRT' | 'MAP' | 'TOF' | 'TOW' | 'ZFW' | 'LC', pattern: RegExp): ElementReader => ({
  pattern,
  read: ([text = '']) => ({ kind, text }),
});

/** Every identifier of AHM 780 and 781 with how its element reads. A longer identifier comes before its beginning. */
export const elementReaders: ReadonlyMap<string, ElementReader> = new Map([
  ['EDL', delays('EDL')],
  ['DLA', { pattern: /([A-Z0-9/]+)/y, read: ([text = '']) => ({ kind: 'DLA', codes: readDelayDetails(text) }) }],
  ['FLD', { pattern: /(\d\d)/y, read: ([text = '']) => ({ kind: 'FLD', day: dayOfMonth(text) }) }],
  ['CRT', kept('CRT', new RegExp(`((?:${timePattern})(?:/(?:${timePattern}))?)`, 'y'))],
  ['MAP', kept('MAP', single)],
  ['TOF', kept('TOF', /(\d{4,6})/y)],
  ['TOW', kept('TOW', /(\d{5,6})/y)],
  ['ZFW', kept('ZFW', /(\d{5,6})/y)],
  ['AD', times('AD')],
  ['AA', times('AA')],
  ['FR', times('FR')],
  ['RR', time('RR', single)],
  ['ED', time('ED', withDay)],
  ['NI', time('NI', withDay)],
  ['EO', time('EO', single)],
  ['EB', time('EB', single)],
  [
    'EA',
    {
      pattern: expectedAirport,
      read: ([at = '', airport = null]) => ({ kind: 'EA', time: readTimeGroup(at), airport }),
    },
  ],
  ['DL', delays('DL')],
  [
    'PX',
    {
      pattern: /(\d{1,3}(?:\/\d{1,3})*)/y,
      read: ([text = '']) => ({ kind: 'PX', counts: text.split('/').map(Number) }),
    },
  ],
  ['DR', { pattern: /(\d\d)/y, read: ([code = '']) => ({ kind: 'DR', code }) }],
  ['RC', kept('RC', /(\d{4} +[A-Z]{3})/y)],
  ['LC', kept('LC', /([A-Z0-9]{0,4})/y)],
]);

function dayOfMonth(text: string): number {
  const day = Number(text);
  if (day < 1 || day > 31) throw new Unreadable(`has the day ${text}`);
  return day;
}
