/**
 * Binary programs, solved by a kept solver. A program lives as text for one solve only; the solver keeps nothing between
 * two, takes no chance and knows no clock, so the same text always gives the same answer.
 */
import loadSolver, { type Highs } from 'highs';

/** A sum of variables, each by its number, with whole coefficients. */
export type Sum = readonly (readonly [variable: number, coefficient: number])[];

export interface Program {
  variables: number;
  minimise: Sum;
  where: readonly { sum: Sum; is: '>=' | '<=' | '='; than: number }[];
}

/** Its types are written for CommonJS, where the function would sit one step deeper than it does in a module. */
const load = loadSolver as unknown as () => Promise<Highs>;
let solver: Promise<Highs> | null = null;

/** The variables that are 1 in the least solution; null when there is none. */
export async function solve(program: Program): Promise<Set<number> | null> {
  if (program.variables === 0) return program.where.every(({ is, than }) => holdsOfZero(is, than)) ? new Set() : null;
  solver ??= load();
  const { Status, Columns } = (await solver).solve(writeProgram(program), { output_flag: false });
  if (Status === 'Infeasible') return null;
  if (Status !== 'Optimal') throw new Error(`The solver ended with "${Status}".`);
  const ones = new Set<number>();
  for (const [name, column] of Object.entries(Columns)) {
    if ('Primal' in column && Math.round(column.Primal) === 1) ones.add(Number(name.slice(1)));
  }
  return ones;
}

function holdsOfZero(is: '>=' | '<=' | '=', than: number): boolean {
  return is === '=' ? than === 0 : is === '>=' ? than <= 0 : than >= 0;
}

/** In the text form of linear programs, one term a line. A sum without terms is written as none of the first variable. */
function writeProgram({ variables, minimise, where }: Program): string {
  const names = Array.from({ length: variables }, (_, index) => ` x${index}`);
  return [
    'Minimize',
    ` cost: ${writeSum(minimise)}`,
    'Subject To',
    ...where.map(({ sum, is, than }, index) => ` c${index}: ${writeSum(sum)} ${is} ${than}`),
    'Binary',
    ...names,
    'End',
  ].join('\n');
}

function writeSum(sum: Sum): string {
  if (sum.length === 0) return '0 x0';
  return sum.map(([variable, by]) => `${by < 0 ? '-' : '+'} ${Math.abs(by)} x${variable}`).join('\n  ');
}
