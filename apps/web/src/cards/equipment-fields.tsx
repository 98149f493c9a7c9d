import { Field } from '../shell/fields.js';
import type { Step } from './step-props.js';

type Need = Step['needs'][number];

/** Which one, by what the card calls it. */
export type Stated = Record<string, { number: string; calibratedUntil: string }>;

const EMPTY = { number: '', calibratedUntil: '' };

/** What is stated when the step is done, or as a wait or a run begins. */
export const statedIn = ({ needs, state, kind }: Step): Need[] =>
  state === 'next' || !['wait', 'run'].includes(kind) ? needs.filter(({ stated }) => stated) : [];

/** As it is sent. A tool that the card issued is that one. */
export const usedOf = (step: Step, stated: Stated) =>
  statedIn(step).map(({ what, issued, calibrated }) => {
    const { number, calibratedUntil } = stated[what] ?? EMPTY;
    return { what, number: issued ?? number, ...(calibrated && calibratedUntil !== '' ? { calibratedUntil } : {}) };
  });

interface EquipmentFieldsProps {
  step: Step;
  stated: Stated;
  onStated(stated: Stated): void;
}

/** Which equipment is used: what was used last is one touch, anything else is typed. */
export function EquipmentFields({ step, stated, onStated }: EquipmentFieldsProps) {
  return (
    <>
      {statedIn(step).map((need, at) => {
        const given = stated[need.what] ?? EMPTY;
        const set = (change: Partial<typeof EMPTY>) => onStated({ ...stated, [need.what]: { ...given, ...change } });
        const pointer = `/used/${at}`;
        return (
          <fieldset key={need.what}>
            <legend>
              {need.what}
              {need.issued !== null && `: ${need.issued}, issued by this card`}
            </legend>
            <Again need={need} given={given} onAgain={set} />
            {need.issued === null && (
              <Field
                label={`Number read on the ${need.what}`}
                value={given.number}
                onValue={(number) => set({ number })}
                pointer={`${pointer}/number`}
                most={60}
                required
              />
            )}
            {need.calibrated && (
              <Field
                label={`${need.what} calibrated until`}
                type="date"
                value={given.calibratedUntil}
                onValue={(calibratedUntil) => set({ calibratedUntil })}
                pointer={`${pointer}/calibratedUntil`}
                required
                short
              />
            )}
          </fieldset>
        );
      })}
    </>
  );
}

interface AgainProps {
  need: Need;
  given: typeof EMPTY;
  onAgain(given: typeof EMPTY): void;
}

/** Offers the one that was used last; it is not entered before somebody says that it is the one. */
function Again({ need: { last, issued }, given, onAgain }: AgainProps) {
  if (last === null || (issued !== null && last.number !== issued)) return null;
  const { number, calibratedUntil } = last;
  if (given.number === number && given.calibratedUntil === (calibratedUntil ?? '')) return null;
  return (
    <button type="button" onClick={() => onAgain({ number, calibratedUntil: calibratedUntil ?? '' })}>
      It is {number} again{calibratedUntil !== null && `, calibrated until ${calibratedUntil}`}
    </button>
  );
}
