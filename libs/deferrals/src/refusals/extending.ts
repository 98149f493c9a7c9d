import type { RefusalEntry } from './entry.js';

/** Extending a rectification interval under the operator's own procedure. */
export const EXTENDING_REFUSALS = {
  'no-extension-procedure': {
    sentence: 'The operator holds no approved procedure to extend rectification intervals.',
    next: 'Rectify in time, or ask the authority and enter its document.',
    paragraph: 'ORO.MLR.105(f); 14 CFR 121.628 (operations specification D095)',
  },
  'category-a-not-extendable': {
    sentence: 'Defect {defect} was deferred under category A, which the operator never extends.',
    next: 'Rectify it in time, or ask the authority and enter its document.',
    paragraph: 'ORO.MLR.105(f); FAA Order 8900.1 4-689; FAA MMEL Policy Letter 25',
  },
  'category-not-extendable': {
    sentence: 'Category {category} is not among those that the operator may extend: {allowed}.',
    next: 'Rectify it in time, or ask the authority and enter its document.',
    paragraph: 'ORO.MLR.105(f); 14 CFR 121.628 (operations specification D095)',
  },
  'basis-not-extendable': {
    sentence: '{basis} sets its own limit, which the operator does not extend.',
    next: 'Ask whoever issued it for another document.',
    paragraph: 'M.A.403(b)(c)',
  },
  'second-extension': {
    sentence: 'Defect {defect} was extended once, at {extendedAt}.',
    next: 'Rectify it in time, or ask the authority and enter its document.',
    paragraph: 'ORO.MLR.105(f); FAA Order 8900.1 4-689',
  },
  'extension-after-expiry': {
    sentence: 'The interval ended at {endedAt}; an extension granted at {grantedAt} is too late.',
    next: 'Rectify it before the next flight, or ask the authority and enter its document.',
    paragraph: 'ORO.MLR.105(e)(3) and (f)',
  },
  'extension-reason-within-control': {
    sentence: 'The reason given, "{reason}", does not lie outside the operator\'s control.',
    next: "Rectify it in time. An interval is extended only for reasons outside the operator's control.",
    paragraph: 'ORO.MLR.105(f); FAA Order 8900.1 4-689',
  },
  'same-person-granting': {
    sentence: '{name} asked for the extension and cannot grant it.',
    next: 'Ask another named person who may extend.',
    paragraph: 'AMC1 ORO.MLR.105(f)',
  },
  'extension-too-long': {
    sentence: 'The extension is not possible as asked: {because}',
    next: 'Ask for at most the interval of the row.',
    paragraph: 'ORO.MLR.105(f)',
  },
  'extension-needs-agreement': {
    sentence: 'The authority must agree to this extension beforehand, and no reference of its agreement is given.',
    next: 'Ask the authority and enter the reference of its agreement.',
    paragraph: 'Transport Canada alert of 2022 on extensions',
  },
  'extension-asked-after-grant': {
    sentence: 'The extension was asked for at {requestedAt}, after it was granted at {grantedAt}.',
    next: 'Check both times.',
    paragraph: 'ORO.MLR.105(f)',
  },
  'rectified-not-released': {
    sentence: 'Defect {defect} is rectified and only waits for its release; there is no interval to extend.',
    next: 'Release it. If the work is not good after all, enter the work that is still to be done first.',
    paragraph: 'ORO.MLR.105(f); 145.A.50(a)',
  },
} as const satisfies Record<string, RefusalEntry>;
