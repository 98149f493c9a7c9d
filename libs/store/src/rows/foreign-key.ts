import type { EntitySchemaOptions } from 'typeorm';

type ForeignKey = NonNullable<EntitySchemaOptions<unknown>['foreignKeys']>[number];

/**
 * A reference inside one operator: every such key starts with the operator, so that a row can never point at another
 * operator's. `column` is the property that holds the other row's own key.
 */
export function within(name: string, target: string, column: string, other = 'id'): ForeignKey {
  return { name, target, columnNames: ['operatorId', column], referencedColumnNames: ['operatorId', other] };
}

export function toMember(name: string, column: string): ForeignKey {
  return within(name, 'membership', column, 'personId');
}

export function to(name: string, target: string, column: string, other = 'id'): ForeignKey {
  return { name, target, columnNames: [column], referencedColumnNames: [other] };
}

export function toOperator(name: string): ForeignKey {
  return to(name, 'operator', 'operatorId');
}
