import type { Schemas } from '../api/client.js';
import { Field } from '../shell/fields.js';
import { Select } from '../shell/select.js';

/** What the MEL asks of one aircraft, as it is typed. */
export interface Fit {
  serial: string;
  /** Codes with commas between. */
  configuration: string;
  /** True once somebody has said which codes are fitted, be it none. */
  known: boolean;
  base: string;
}

export const NO_FIT: Fit = { serial: '', configuration: '', known: false, base: '' };

/** As it is sent: what nobody said is left out. */
export function fitSent({ serial, configuration, known, base }: Fit): object {
  const codes = configuration
    .split(',')
    .map((one) => one.trim())
    .filter(Boolean);
  return {
    ...(serial.trim() && { serial: Number(serial) }),
    ...(known && { configuration: codes }),
    ...(base && { base }),
  };
}

interface FitFieldsProps {
  fit: Fit;
  onFit(fit: Fit): void;
  /** Codes that the MEL of the type knows. */
  codes: readonly string[];
  stations: Schemas['AircraftEntries']['stations'];
}

export function FitFields({ fit, onFit, codes, stations }: FitFieldsProps) {
  const hint = codes.length === 0 ? 'With commas between' : `The MEL knows ${codes.join(', ')}`;
  return (
    <>
      <Field
        label="Serial number"
        hint="Without it, an entry written for certain serials is not settled."
        value={fit.serial}
        onValue={(serial) => onFit({ ...fit, serial })}
        pointer="/serial"
        inputMode="numeric"
        short
      />
      <label class="choice">
        <input
          type="checkbox"
          checked={fit.known}
          onChange={(event) => onFit({ ...fit, known: event.currentTarget.checked })}
        />
        <span>
          I know which configurations of the MEL are fitted
          <span class="hint">Otherwise entries written for one of them are not settled.</span>
        </span>
      </label>
      {fit.known && (
        <Field
          label="Configuration codes"
          hint={`${hint}. Empty: none of them.`}
          value={fit.configuration}
          onValue={(configuration) => onFit({ ...fit, configuration })}
          pointer="/configuration"
        />
      )}
      {stations.length > 0 && (
        <Select
          label="Based at"
          value={fit.base}
          onValue={(base) => onFit({ ...fit, base })}
          options={stations.map(({ code, name }) => ({ value: code, text: `${name} (${code})` }))}
          optional
        />
      )}
    </>
  );
}
