import { TT, UU } from '../kleene.js';
import { judged, partOf, type FixedRule } from './item.js';

/** The row is written for this aircraft's configuration. */
export const configuration: FixedRule = (item, frame) => {
  const id = partOf(item, 'configuration');
  const text = `the row is written for this aircraft (${item.entry.title}, sub-entry ${item.subEntry.id})`;
  if (item.configurationKnown)
    return [judged('configuration', id, text, TT, 'type, configuration and serial number fit')];
  const match = frame.fitted.match(item.entry.number);
  const missing =
    match.kind === 'unknown' && match.missing.length > 0 ? match.missing.join(' and ') : 'configuration';
  const which = frame.fitted.subEntries(item.entry.number).map((subEntry) => subEntry.id);
  return [
    judged(
      'configuration',
      id,
      text,
      UU,
      `the aircraft's ${missing} is not known, so it may be sub-entry ${which.join(' or ')}`,
    ),
  ];
};
