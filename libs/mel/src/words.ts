/** Words as a search compares them: lower case, without accents, letters and digits only. */

/** The words of a text; "Nose-wheel steering (L)" gives nose, wheel, steering, l. */
export const wordsOf = (text: string): string[] =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');

const SHORTEST_FORGIVEN = 5;
const LETTERS = /^\p{L}+$/u;

/** One letter missing, added, replaced, or two neighbours swapped. */
const oneSlipApart = (shorter: string, longer: string): boolean => {
  const gap = longer.length - shorter.length;
  if (gap > 1) return false;
  let at = 0;
  while (at < shorter.length && shorter[at] === longer[at]) at += 1;
  if (gap === 1) return shorter.slice(at) === longer.slice(at + 1);
  if (shorter.slice(at + 1) === longer.slice(at + 1)) return true;
  return (
    shorter[at] === longer[at + 1] && shorter[at + 1] === longer[at] && shorter.slice(at + 2) === longer.slice(at + 2)
  );
};

/**
 * Whether a written word may be a slip of the pen for another: words of letters only, both of five or more.
 * "steerign" is nearly "steering"; "10" is never nearly "11".
 */
export const nearlyEqual = (written: string, meant: string): boolean => {
  if (written === meant) return true;
  if (Math.min(written.length, meant.length) < SHORTEST_FORGIVEN) return false;
  if (!LETTERS.test(written) || !LETTERS.test(meant)) return false;
  return written.length <= meant.length ? oneSlipApart(written, meant) : oneSlipApart(meant, written);
};
