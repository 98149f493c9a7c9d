import { useSession } from '../session/session.js';
import { anyOf } from '../words/words.js';
import { Page } from './page.js';

interface Place {
  href: string;
  text: string;
  about: string;
  /** Absent: everybody. */
  roles?: readonly string[];
}

const MAKERS = ['quality', 'administrator'] as const;

/** Every page that belongs to no one aircraft and is not in the line at the top, by what somebody comes for. */
const GROUPS: readonly { title: string; places: readonly Place[] }[] = [
  {
    title: 'Watching',
    places: [
      {
        href: '/repeats',
        text: 'Work owed again and again',
        about: 'Repeated procedures and inspections, due and missed.',
      },
      {
        href: '/extensions',
        text: 'Extensions',
        about: 'Asked for, granted, refused; the notices to the authority.',
      },
      { href: '/reminders', text: 'Reminders', about: 'Where you are told how much is left; calendars.' },
    ],
  },
  {
    title: 'Planning',
    places: [
      {
        href: '/control/swap',
        text: 'Exchange rotations',
        about: 'Which aircraft for which flight, where the plan does not hold.',
      },
      {
        href: '/control/stations',
        text: 'Stations and their people',
        about: 'Who is authorised and equipped, where and when.',
      },
      {
        href: '/movements',
        text: 'Movement messages',
        about: 'Take them in; mend those that could not be read.',
      },
    ],
  },
  {
    title: 'The operator',
    places: [
      {
        href: '/people',
        text: 'People',
        about: 'Accounts, roles, and what each may sign.',
        roles: [...MAKERS, 'maintenance-control'],
      },
      {
        href: '/control/aircraft',
        text: 'Aircraft',
        about: 'What is fitted to each; new ones, and those that left.',
      },
      { href: '/mel', text: 'MEL', about: 'The revisions that were loaded, and the next one.' },
      { href: '/cards', text: 'Work cards', about: 'Procedures step by step, and their manuals.' },
      { href: '/settings', text: 'Settings', about: 'What the operator settles, each with its source.' },
      { href: '/zone-data', text: 'Time-zone data', about: 'Deadlines that newer data would move.' },
    ],
  },
  {
    title: 'The record',
    places: [
      { href: '/record', text: 'The record', about: 'Verify it, prove it, hand it out.' },
      {
        href: '/record/keeping',
        text: 'Periods of keeping',
        about: 'What no longer has to be kept.',
        roles: MAKERS,
      },
    ],
  },
];

export function MorePage() {
  const { roles } = useSession();
  return (
    <Page title="More">
      {GROUPS.map(({ title, places }) => (
        <section key={title} aria-label={title}>
          <h2>{title}</h2>
          <ul class="plain-list cards">
            {places.map((place) => (
              <li key={place.href}>
                <Leads place={place} mine={place.roles?.some((role) => roles.includes(role)) ?? true} />
              </li>
            ))}
          </ul>
        </section>
      ))}
    </Page>
  );
}

/** A page that is not for the reader is named all the same, with whom to ask. */
function Leads({ place: { href, text, about, roles = [] }, mine }: { place: Place; mine: boolean }) {
  if (!mine) {
    return (
      <p class="soft">
        {text}: for {anyOf(roles)}.
      </p>
    );
  }
  return (
    <a class="big" href={href}>
      <span class="strong">{text}</span>
      <span class="soft block">{about}</span>
    </a>
  );
}
