/** A group HHMM or DDHHMM as sent: minutes of the day 0 to 1440 (2400 is the end of the day), and the day if given. */
export interface TimeGroup {
  day: number | null;
  minutes: number;
}

/** Two groups of which either may be absent: off-block and airborne, or touch-down and on-block. */
export interface TimePair {
  first: TimeGroup | null;
  second: TimeGroup | null;
}

export interface Delay {
  /** Two digits of AHM 730. */
  code: string;
  minutes: number;
}

/** The same shape under each of several identifiers. */
type Each<Kind extends string, Content> = { [K in Kind]: { kind: K } & Content }[Kind];

/** One element of a message. */
export type MovementElement =
  /** AD: off-block / airborne. AA: touch-down / on-block. FR: touch-down / on-block, back where it left from. */
  | Each<'AD' | 'AA' | 'FR', { times: TimePair }>
  /** RR: back on the ramp. ED, NI: expected departure, next information. EO: expected take-off. EB: expected on-block. */
  | Each<'RR' | 'ED' | 'NI' | 'EO' | 'EB', { time: TimeGroup }>
  /** EA: expected touch-down, with the airport on a departure and on a diversion. */
  | { kind: 'EA'; time: TimeGroup; airport: string | null }
  /** DL and EDL: reasons of a delay. */
  | Each<'DL' | 'EDL', { delays: Delay[] }>
  /** DLA: sub-codes in the order of the reasons; an empty slot is null. */
  | { kind: 'DLA'; codes: (string | null)[] }
  /** PX: passengers by destination. */
  | { kind: 'PX'; counts: number[] }
  /** DR: reason of a diversion. */
  | { kind: 'DR'; code: string }
  /** FLD: scheduled UTC day of this leg. */
  | { kind: 'FLD'; day: number }
  /** Read, and used for nothing here. */
  | Each<'RC' | 'CRT' | 'MAP' | 'TOF' | 'TOW' | 'ZFW' | 'LC', { text: string }>;
