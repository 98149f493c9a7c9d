import { Choice, Field } from '../shell/fields.js';

export type DocumentKind = 'modification' | 'directive' | 'permit';

export interface DocumentNamed {
  kind: DocumentKind | null;
  reference: string;
  /** Last day, YYYY-MM-DD; empty when it has no end. */
  lastDay: string;
}

export const NO_DOCUMENT: DocumentNamed = { kind: null, reference: '', lastDay: '' };

const KINDS = [
  { value: 'modification', text: 'Modification' },
  { value: 'directive', text: 'Airworthiness directive' },
  { value: 'permit', text: 'Permit to fly' },
] as const;

/** `until` is exclusive: the first instant after the last day, UTC. */
export function documentSent({ kind, reference, lastDay }: DocumentNamed): object {
  if (lastDay === '') return { kind, reference };
  const next = new Date(Date.parse(`${lastDay}T00:00:00Z`) + 86_400_000);
  return { kind, reference, until: next.toISOString() };
}

interface DocumentFieldsProps {
  named: DocumentNamed;
  onNamed(named: DocumentNamed): void;
  pointer: string;
  withEnd?: boolean;
}

export function DocumentFields({ named, onNamed, pointer, withEnd = true }: DocumentFieldsProps) {
  return (
    <>
      <Choice
        legend="Which document"
        options={KINDS}
        value={named.kind}
        onValue={(kind) => onNamed({ ...named, kind })}
      />
      <Field
        label="Its number, with revision"
        most={120}
        value={named.reference}
        onValue={(reference) => onNamed({ ...named, reference })}
        pointer={`${pointer}/reference`}
        required
      />
      {withEnd && (
        <Field
          label="Its last day, UTC"
          type="date"
          value={named.lastDay}
          onValue={(lastDay) => onNamed({ ...named, lastDay })}
          pointer={`${pointer}/until`}
          short
        />
      )}
    </>
  );
}
