/**
 * A leg as whoever counts intervals takes it. The shape is that of `Leg` in libs/intervals; the two libs stand beside each
 * other and neither enters the other, so a test holds the shapes together.
 */
export interface CountedLeg {
  offBlockAt: string;
  airborneAt?: string;
  landedAt?: string;
  onBlockAt?: string;
  blockMinutes: number;
  flightMinutes: number;
  cycles: number;
  landings: number;
}

/** The aircraft left the ground on it. */
export function leftTheGround({ airborneAt, flightMinutes, cycles }: CountedLeg): boolean {
  return airborneAt !== undefined || flightMinutes > 0 || cycles > 0;
}
