import { EntitySchema } from 'typeorm';
import { key, nullable, text, texts } from './column.js';
import { toOperator } from './foreign-key.js';

/** An airworthiness directive that needs an item to work. */
export interface DirectiveRow {
  operatorId: string;
  id: string;
  aircraftType: string;
  number: string;
  /** MEL entry number. */
  entry: string;
  /** Null: all units of the entry. */
  units: string[] | null;
}

export const DirectiveTable = new EntitySchema<DirectiveRow>({
  name: 'directive',
  columns: {
    operatorId: key(),
    id: key(),
    aircraftType: text(),
    number: text(),
    entry: text(),
    units: texts(nullable),
  },
  foreignKeys: [toOperator('directive_operator')],
});
