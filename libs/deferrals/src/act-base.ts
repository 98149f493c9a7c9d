/** The things that acts are about. */
export interface Aircraft {
  registration: string;
  type: string;
  operator: string;
}

/** A part fitted or removed, with the certificate it came with. */
export interface Part {
  partNumber: string;
  serialOn?: string;
  serialOff?: string;
  certificate?: string;
}

/** A document other than a deferral that a thing may be left altered under. */
export interface DocumentOwner {
  kind: 'modification' | 'directive' | 'permit';
  /** Its number, with revision. */
  reference: string;
  /** Its last instant (exclusive), ISO 8601 with offset; null when it has no end. */
  until: string | null;
}

/** What a thing left on the aircraft belongs to. */
export type Owner = { kind: 'defect'; defect: string } | DocumentOwner;

/** What failed. `units` names one unit, or several when it is one of these and nobody knows which. */
export interface FailedItem {
  /** MEL entry number and sub-entry; null when the MEL lists no such item. */
  entry: string | null;
  subEntry: string | null;
  units: string[];
}

/** What a correction may put right. Everything else is put right by doing and signing the right thing. */
export type CorrectableField = CorrectableWord | 'where' | 'tag' | CorrectableDetail;
/** Of a write-up. */
export type CorrectableWord =
  'description' | 'sheet' | 'system' | 'faultMessage' | 'occurredAt' | 'recordedAt' | 'whenFound';
/** Of the acts that follow it; `where` and `tag` are of a thing left on the aircraft. */
export type CorrectableDetail =
  | 'unit'
  | 'reference'
  | 'issuedBy'
  | 'limit'
  | 'placardText'
  | 'workDone'
  | 'partNumber'
  | 'serialOn'
  | 'serialOff'
  | 'certificate'
  | 'test'
  | 'findings'
  | 'staysOpen'
  | 'checks'
  | 'reason'
  | 'watch'
  | 'remarks'
  | 'number'
  | 'authority'
  | 'doneAt'
  | 'lateReason'
  | 'whyNotFixed'
  | 'plan'
  | 'agreement';
