/** The published JSON Schema (draft 2020-12) of a library of work cards. */
import { deepFreeze } from '../deep-freeze.js';
import { closed, listOf, PARTS, ref } from '../schema-parts.js';
import { CARD_PARTS } from './card-parts.js';

const { name, names, text, line } = PARTS;

export const CARDS_SCHEMA: Readonly<Record<string, unknown>> = deepFreeze({
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  $id: 'urn:proviso:cards:1',
  title: 'Proviso work cards, format 1',
  description: 'A library of work cards for one aircraft type. The manual that a card cites prevails.',
  ...closed(['format', 'document', 'operator', 'aircraftType', 'revision', 'effectiveOn', 'cards'], {
    format: { const: 'proviso-cards/1' },
    document: ref('line'),
    operator: ref('line'),
    aircraftType: ref('line'),
    revision: ref('line'),
    effectiveOn: { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$' },
    notice: ref('text'),
    cards: listOf('card', 500),
  }),
  $defs: { name, names, text, line, ...CARD_PARTS },
});
