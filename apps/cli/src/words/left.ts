/** The register of an aircraft in words, as somebody prints it and takes it to the aircraft. */
import { thingInWords } from '#deferrals';

export interface LeftLine {
  kind: string;
  where: string;
  tag: string;
  undo: string;
  owner: string;
  alsoFor: readonly { number: string }[];
  under: string | null;
  fittedBy: string;
  fittedAt: string;
}

export interface LeftView {
  operator: string;
  registration: string;
  at: string;
  left: readonly LeftLine[];
  orphans: readonly string[];
  openWork: readonly string[];
  open: readonly string[];
}

export function leftWords({ operator, registration, at, left, orphans, open }: LeftView): string {
  const head = `${registration} of ${operator}, as of ${at.slice(0, 16)}Z`;
  const lost = orphans.map((thing) => `MAY NOT FLY: nobody owns ${thing}. Undo it, or name its owner.`);
  const things = left.length === 0 ? ['Nothing is left on the aircraft.'] : left.map(lineWords);
  const items = open.length === 0 ? ['Nothing is open.'] : ['Open:', ...open.map((line) => `  ${line}`)];
  return [head, ...lost, ...things, ...items].join('\n');
}

function lineWords({ kind, where, tag, undo, owner, alsoFor, under, fittedBy, fittedAt }: LeftLine): string {
  const also = alsoFor.map(({ number }) => ` and for ${number}`).join('');
  const by = under === null ? '' : `, ${under}`;
  return [
    `- ${thingInWords({ kind, where, tag })}, for ${owner}${also}`,
    `    to undo: ${undo}`,
    `    left by ${fittedBy}, ${fittedAt.slice(0, 16)}Z${by}`,
  ].join('\n');
}
