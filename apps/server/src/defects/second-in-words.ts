import { type DefectLife, secondNeeded, stepInFull } from '#deferrals';

/** A step and whom it asks for, as the second person certifies it: `15 "Run the pump and watch." (somebody at the pump switch)`. */
export function secondInWords({ cards }: Pick<DefectLife, 'cards'>, work: string, step: string): string {
  const { card } = cards.find(({ started }) => started.id === work)?.started ?? {};
  const asked = card?.steps.find(({ id }) => id === step);
  if (!card || !asked) return step;
  const needed = secondNeeded(asked);
  return needed ? `${stepInFull(card, asked)} (${needed.what})` : stepInFull(card, asked);
}
