/** The part of the npm package logic-solver 2.0.1 (a SAT solver) that the oracle uses; it brings no types. */
declare module 'logic-solver' {
  export type Formula = string | { readonly type?: string };
  export function and(...operands: Formula[]): Formula;
  export function or(...operands: Formula[]): Formula;
  export function not(operand: Formula): Formula;
  export class Solver {
    require(...formulas: Formula[]): void;
    solve(): object | null;
    solveAssuming(formula: Formula): object | null;
  }
}
