import { Injectable, ParseUUIDPipe, type ArgumentMetadata } from '@nestjs/common';
import { Problem } from './problem.js';

/** The database takes an id in capitals for the same; so it is written in one way before anything compares it. */
@Injectable()
class IdPipe extends ParseUUIDPipe {
  override async transform(value: string, metadata: ArgumentMetadata): Promise<string> {
    return (await super.transform(value, metadata)).toLowerCase();
  }
}

/** The id in an address. Nothing stands under what is no id. */
export const ID = new IdPipe({
  exceptionFactory: () => new Problem('not-found', 'What stands in the address is no id.'),
});
