/** A JASC code is one of the table and belongs to the entry's chapter. A chapter alone may be newer than the table. */
import type { MelContent } from '../content.js';
import { systemOf } from '../jasc.js';
import type { Finding } from '../mel-error.js';

export const systemFindings = (content: MelContent): Finding[] =>
  content.entries.flatMap(({ jasc, chapter }, at) => {
    if (jasc === undefined) return [];
    const path = ['entries', at, 'jasc'];
    if (systemOf(jasc) === null) return [{ path, reason: `"${jasc}" is no code of the JASC table` }];
    return jasc.startsWith(chapter) ? [] : [{ path, reason: `"${jasc}" does not belong to chapter ${chapter}` }];
  });
