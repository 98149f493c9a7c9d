import { DefaultNamingStrategy } from 'typeorm';

/** `offBlockAt` in code is `off_block_at` in the database. */
export class PlainNames extends DefaultNamingStrategy {
  override columnName(property: string, custom: string | undefined): string {
    return custom ?? property.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
  }
}
