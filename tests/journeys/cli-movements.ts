/** A leg in short, as tests/cases/intervals.yaml writes it: off blocks, minutes in the air; block minutes ten more. */
export interface ShortLeg {
  off: string;
  airborne?: string;
  landed?: string;
  minutes: number;
  block?: number;
  cycles?: number;
  from?: string;
}

/** `2026-01-26T09:10Z` -> `260910` */
const dayAndTime = (at: number): string => new Date(at).toISOString().slice(8, 16).replace(/[T:]/g, '');

const plus = (at: number, minutes: number): number => at + minutes * 60_000;

/** The movement messages that an aircraft sends on these legs, to and fro between two stations. */
export function messagesOf(legs: readonly ShortLeg[], registration = 'QABX'): string {
  let [here, there] = ['AAA', 'BBB'];
  return legs
    .map((leg, index) => {
      here = leg.from ?? here;
      const off = Date.parse(leg.off);
      const airborne = leg.airborne === undefined ? plus(off, 5) : Date.parse(leg.airborne);
      const landed = leg.landed === undefined ? plus(airborne, leg.minutes) : Date.parse(leg.landed);
      const onBlocks = plus(off, leg.block ?? leg.minutes + 10);
      const flight = `ZZ${100 + index}/${dayAndTime(off).slice(0, 2)}.${registration}`;
      const at = (instant: number) => `RECEIVED ${new Date(instant).toISOString()}`;
      if (leg.cycles === 0) {
        const back = dayAndTime(onBlocks).slice(2);
        return [at(onBlocks), `MVT\n${flight}.${here}\nAD${dayAndTime(off)} RR${back}`].join('\n');
      }
      const out = `MVT\n${flight}.${here}\nAD${dayAndTime(off)}/${dayAndTime(airborne)}`;
      const home = `MVT\n${flight}.${there}\nAA${dayAndTime(landed)}/${dayAndTime(onBlocks)}`;
      [here, there] = [there, here];
      return [at(airborne), out, at(onBlocks), home].join('\n');
    })
    .join('\n\n');
}
