/** The closures of a MEL revision: one per proviso, made at its first use, kept as long as the revision is. */
import type { Mel, Proviso } from '#mel';
import { nameOf } from '../frame/compiled-mel.js';
import { compileClosure, type ClosureProviso } from './closure.js';

const OF_MEL = new WeakMap<Mel, WeakMap<Proviso, ClosureProviso>>();

export function closureOf(mel: Mel, proviso: Proviso): ClosureProviso {
  let ofMel = OF_MEL.get(mel);
  if (ofMel === undefined) OF_MEL.set(mel, (ofMel = new WeakMap()));
  let one = ofMel.get(proviso);
  if (one === undefined) ofMel.set(proviso, (one = compileClosure(proviso, (subject) => nameOf(mel, subject))));
  return one;
}
