import { ParseUUIDPipe } from '@nestjs/common';
import { Problem } from './problem.js';

/** The id in an address. Nothing stands under what is no id. */
export const ID = new ParseUUIDPipe({
  exceptionFactory: () => new Problem('not-found', 'What stands in the address is no id.'),
});
