/** The end of something an answer rests on; the earliest of them is the end of the answer. */
export interface Until {
  /** ISO 8601 with offset. */
  at: string;
  because: string;
}
