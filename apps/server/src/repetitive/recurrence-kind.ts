const KIND = 'recurrence/';

/** How a decision on a repetitive defect stands among the answers of named persons. */
export const recurrenceKind = (defect: string): string => `${KIND}${defect}`;

export const isRecurrence = (judgement: string): boolean => judgement.startsWith(KIND);
