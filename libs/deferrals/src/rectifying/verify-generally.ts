/**
 * After the work somebody goes over the aircraft: tools are accounted for, panels and cowls are closed, and what is left is
 * what the register says. It counts until anything is touched again. 145.A.48(a)(1) and its AMC (from memory).
 */
import type { GenerallyVerified } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { thingsInWords } from '../leaving/left-items.js';
import { Refusal } from '../refusal.js';
import { needWork, seen } from './open-work.js';

export const generallyVerified: ActRule<'generally-verified'> = {
  kind: 'generally-verified',
  privilege: 'sign-procedure',
  admit(life, { toolsAccounted, panelsClosed, registerChecked }) {
    const { defect, left } = life;
    needWork(life);
    const missing = [
      ...(toolsAccounted ? [] : ['tools accounted for']),
      ...(panelsClosed ? [] : ['panels and cowls closed']),
      ...(registerChecked ? [] : ['the register checked against the aircraft']),
    ];
    if (missing.length > 0) throw new Refusal('not-generally-verified', { defect, missing });
    const tools = left.filter(({ kind }) => kind === 'tool');
    if (tools.length > 0) throw new Refusal('tools-not-returned', { defect, tools: thingsInWords(tools) });
  },
  changes: (life, act) => seen(life, { verified: act }),
};

export interface VerifyGenerally extends Command {
  toolsAccounted: boolean;
  panelsClosed: boolean;
  registerChecked: boolean;
  remarks?: string;
}

export function verifyGenerally(life: DefectLife, command: VerifyGenerally, context: Context): GenerallyVerified[] {
  const { toolsAccounted, panelsClosed, registerChecked, remarks = '' } = command;
  const said = { toolsAccounted, panelsClosed, registerChecked, remarks };
  const head = headOf(command, context);
  return decided(generallyVerified, life, { kind: 'generally-verified', ...head, defect: life.defect, ...said });
}
