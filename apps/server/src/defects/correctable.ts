/** What of a write-up may be corrected by a signed act. */
export const CORRECTABLE = ['description', 'sheet', 'system', 'faultMessage', 'occurredAt', 'recordedAt'] as const;
