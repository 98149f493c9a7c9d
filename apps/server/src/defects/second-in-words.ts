import { type DefectLife, secondNeeded } from '#deferrals';

/** A step and whom it asks for, as the second person certifies it: "leak-check (somebody at the pump switch)". */
export function secondInWords({ cards }: Pick<DefectLife, 'cards'>, work: string, step: string): string {
  const { card } = cards.find(({ started }) => started.id === work)?.started ?? {};
  const asked = card?.steps.find(({ id }) => id === step);
  const needed = asked && secondNeeded(asked);
  return needed ? `${step} (${needed.what})` : step;
}
