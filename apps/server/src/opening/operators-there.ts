import { listOperators, type Store } from '#store';
import { works } from '../people/members.service.js';
import { presetChosen } from '../settings/settled.js';
import { type Step, stepsOf } from './what-is-missing.js';

/** One operator of a server at a glance, and what it still needs. */
export interface OperatorThere {
  code: string;
  name: string;
  base: string;
  preset: string;
  invented: boolean;
  aircraft: number;
  people: number;
  steps: Step[];
}

/** @param code null: all */
export async function operatorsThere(
  ownerUrl: string,
  store: Store,
  code: string | null,
  at: string,
): Promise<OperatorThere[]> {
  const there: OperatorThere[] = [];
  for (const operator of await listOperators(ownerUrl)) {
    if (code !== null && operator.code !== code) continue;
    const { id, name, base, invented } = operator;
    const counted = await store.withOperator(id, null, async (tx) => ({
      aircraft: (await tx.aircraft.inService()).length,
      people: (await tx.people.members()).filter((one) => works(one, at)).length,
      steps: await stepsOf(tx, at),
    }));
    there.push({ code: operator.code, name, base, preset: presetChosen(operator), invented, ...counted });
  }
  return there;
}
