import type { PipeTransform } from '@nestjs/common';
import { isUUID } from 'class-validator';
import { Problem } from './problem.js';

/** The database takes an id in capitals for the same; so it is written in one way before anything compares it. */
class IdPipe implements PipeTransform<string, string> {
  transform(value: string): string {
    if (!isUUID(value)) throw new Problem('not-found', 'What stands in the address is no id.');
    return value.toLowerCase();
  }
}

/** The id in an address. Nothing stands under what is no id. */
export const ID = new IdPipe();
