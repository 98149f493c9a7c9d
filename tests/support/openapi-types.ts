import openapiTypescript, { astToString } from 'openapi-typescript';
import { pino } from 'pino';
import { format, resolveConfig } from 'prettier';
import type { Store } from '#store';
import { describeInterface } from '../../apps/server/src/index.js';

/** Where the pages keep the types of the interface. */
export const TYPES_FILE = 'apps/web/src/api/openapi.generated.ts';

/** The OpenAPI document of the interface, made without a server or a database. */
export function openApiDocument(): Promise<object> {
  const noStore = {} as Store;
  return describeInterface({ store: noStore, logger: pino({ level: 'silent' }), now: () => '', tzdb: '' });
}

/** The types of the pages as they follow from the interface. */
export async function typesOfInterface(): Promise<string> {
  const document = JSON.stringify(await openApiDocument());
  // In the order of the alphabet, so that a feature that moves leaves no trace here.
  const types = astToString(await openapiTypescript(document, { alphabetize: true }));
  const head = '// Made from the OpenAPI document of the server by `npm run api-types`; do not edit.\n';
  return format(head + types, { ...(await resolveConfig(TYPES_FILE)), filepath: TYPES_FILE });
}
