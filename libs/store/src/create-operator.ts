import { dataSource } from './data-source.js';
import { newId } from './ids.js';
import { tellAllRows } from './record/tell-rows.js';
import { inTransactionOf, type Tx } from './store.js';
import { OperatorTable, type OperatorRow } from './rows/operator.row.js';

/**
 * Enters an operator. It is done as the owner, beside the server: the server's own role cannot make one.
 * @param begin what is entered with it, in the same transaction: all of it or nothing
 * @returns its key
 */
export async function createOperator(
  ownerUrl: string,
  operator: Omit<OperatorRow, 'id' | 'version' | 'tzdb'> & { id?: string },
  begin: (tx: Tx) => Promise<void> = () => Promise.resolve(),
): Promise<string> {
  const id = operator.id ?? newId();
  const source = await dataSource(ownerUrl, { connections: 1 }).initialize();
  try {
    await source.transaction((manager) =>
      inTransactionOf(manager, id, async (tx) => {
        await manager.insert(OperatorTable, { ...operator, id } as object);
        await begin(tx);
        await tellAllRows(tx);
      }),
    );
  } finally {
    await source.destroy();
  }
  return id;
}

/** All operators, by code. As the owner. */
export async function listOperators(ownerUrl: string): Promise<OperatorRow[]> {
  const source = await dataSource(ownerUrl, { connections: 1 }).initialize();
  try {
    return await source.manager.find(OperatorTable, { order: { code: 'ASC' } });
  } finally {
    await source.destroy();
  }
}
