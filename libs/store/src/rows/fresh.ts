type Nullable<Row> = { [K in keyof Row]-?: null extends Row[K] ? K : never }[keyof Row];

/**
 * A row as it is handed in: without operator and version, which the transaction knows, the key optional (a new one is
 * made), and what may be null left out at will.
 */
export type Fresh<Row, Given extends keyof Row = never> = Omit<
  Row,
  'operatorId' | 'version' | 'id' | Nullable<Row> | Given
> &
  Partial<Pick<Row, Nullable<Row> | Given | ('id' & keyof Row)>>;
