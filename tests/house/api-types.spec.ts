import { readFileSync, writeFileSync } from 'node:fs';
import { Validator } from '@seriousme/openapi-schema-validator';
import { expect, it } from 'vitest';
import { openApiDocument, TYPES_FILE, typesOfInterface } from '../support/openapi-types.js';

it('keeps the types of the pages equal to the interface of the server', async () => {
  const types = await typesOfInterface();
  if (process.env['WRITE_API_TYPES']) writeFileSync(TYPES_FILE, types);
  expect(readFileSync(TYPES_FILE, 'utf8'), 'run `npm run api-types` and commit the file').toBe(types);
});

it('describes the interface by a valid OpenAPI 3.1 document', async () => {
  const validator = new Validator();
  const result = await validator.validate((await openApiDocument()) as Record<string, unknown>);
  expect(result.errors ?? []).toEqual([]);
  expect(validator.version).toBe('3.1');
});
