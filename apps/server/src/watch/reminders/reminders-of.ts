/** The reminders that one deferral makes due, to everybody who watches it. It decides; it writes nothing. */
import { basisInWords, type DefectLife, remindersDue, shareLeft, standing } from '#deferrals';
import type { Used } from '#intervals';
import {
  type AircraftRow,
  type DefectRow,
  newId,
  type NoticedReminder,
  type ReminderAddressRow,
  type ReminderRow,
} from '#store';
import { defectNumber } from '../../defects/views.js';
import type { OperatorSettings } from '../../people/operator-settings.js';
import type { ReminderContent } from './reminder-content.js';

/** What every open deferral of an operator is looked at with. */
export interface Watch {
  addresses: readonly ReminderAddressRow[];
  settings: OperatorSettings;
  operator: { code: string; name: string; invented: boolean };
  now: string;
}

export interface Watched {
  row: DefectRow;
  life: DefectLife;
  aircraft: AircraftRow;
  title: string;
  used: Used;
}

type Noticed = Pick<ReminderRow, 'term' | 'share' | 'addressId'>;

export function remindersOf(
  watched: Watched,
  noticed: readonly Noticed[],
  { addresses, settings, operator, now }: Watch,
): NoticedReminder[] {
  const { row, life, aircraft, title, used } = watched;
  const { base, counting } = settings.deferral;
  const stands = standing(life, now < life.recordedAt ? life.enteredAt : now, used, counting);
  const left = shareLeft(life, stands);
  if (left === null) return [];
  // An extension gives a new end, and the shares of what is left until then are noticed anew.
  const term = stands.extended + 1;
  const content: Omit<ReminderContent, 'share'> = {
    operator: { code: operator.code, name: operator.name },
    invented: operator.invented,
    aircraft: aircraft.id,
    registration: aircraft.registration,
    defect: row.id,
    number: defectNumber(aircraft, row),
    title,
    basis: life.deferral === null ? null : basisInWords(life.deferral.basis),
    leftPercent: Math.ceil(left * 100),
    left: stands.left.map(({ sentence }) => sentence).join(' ') || 'its document sets the end.',
    overdue: stands.overdue,
    lastDay: stands.deadline?.lastDay ?? null,
    endsAt: stands.deadline?.endsAt ?? null,
    base,
    noticedAt: now,
  };
  const watching = addresses.filter(({ aircraftId }) => aircraftId === null || aircraftId === aircraft.id);
  return watching.flatMap(({ id: addressId }) => {
    const before = noticed.filter((one) => one.addressId === addressId && one.term === term);
    const { tell, passOver } = remindersDue(left, settings.reminderShares, new Set(before.map(({ share }) => share)));
    const fresh = { defectId: row.id, term, addressId, noticedAt: now };
    const told = (share: number): NoticedReminder => ({
      ...fresh,
      id: newId(),
      share,
      content: { ...content, share },
      state: 'waiting',
      nextAt: now,
      problem: null,
    });
    const passedOver = (share: number): NoticedReminder => ({
      ...fresh,
      id: newId(),
      share,
      content: { ...content, share },
      state: 'passed over',
      nextAt: null,
      problem: 'Less was left already when it was noticed; of that it was told.',
    });
    return [...(tell === null ? [] : [told(tell)]), ...passOver.map(passedOver)];
  });
}
