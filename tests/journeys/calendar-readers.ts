/** Two readers of iCalendar that share no code with each other or with what they read. */
import ICAL from 'ical.js';
import ical from 'node-ical';
import { expect } from 'vitest';

export interface EventRead {
  uid: string;
  summary: string;
  start: string;
  end: string;
  sequence: number;
  status: string;
}

/** As ical.js reads it; node-ical must read the same. */
export function eventsIn(text: string): EventRead[] {
  const component = new ICAL.Component(ICAL.parse(text) as unknown[]);
  const events = component.getAllSubcomponents('vevent').map((one) => {
    const event = new ICAL.Event(one);
    return {
      uid: event.uid,
      summary: event.summary,
      start: event.startDate.toJSDate().toISOString(),
      end: event.endDate.toJSDate().toISOString(),
      sequence: Number(event.sequence),
      status: String(one.getFirstPropertyValue('status')),
    };
  });
  const others = Object.values(ical.parseICS(text)).flatMap((one) =>
    one?.type === 'VEVENT'
      ? [
          {
            uid: one.uid,
            summary: String(one.summary),
            start: one.start.toISOString(),
            end: one.end?.toISOString(),
            sequence: Number(one.sequence),
            status: String(one.status),
          },
        ]
      : [],
  );
  expect(others).toEqual(events);
  return events;
}
