/** What is the same in every problem of one kind. */
export interface ProblemKind {
  status: number;
  title: string;
  next: string;
}
