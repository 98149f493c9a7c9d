import type { ComponentType } from 'preact';
import { LocationProvider, Route, Router, useLocation } from 'preact-iso';
import { useEffect } from 'preact/hooks';
import { useRead } from './api/use-read.js';
import { CardPage } from './cards/card-page.js';
import { CardsPage } from './cards/cards-page.js';
import { LibraryPage } from './cards/library-page.js';
import { RevisionPage } from './cards/revision-page.js';
import { StopCardPage } from './cards/stop-card-page.js';
import { ControlPage } from './control/control-page.js';
import { StationsPage } from './control/stations-page.js';
import { SwapPage } from './control/swap-page.js';
import { DayPage } from './day/day-page.js';
import { AcceptancePage } from './accepting/acceptance-page.js';
import { AnswerPage } from './answer/answer-page.js';
import { ActPage } from './acts/act-page.js';
import { PlacardPage } from './acts/placard-page.js';
import { ProcedurePage } from './acts/procedure-page.js';
import { DocumentPage } from './entry/document-page.js';
import { EntryPage } from './entry/entry-page.js';
import { FindEntryPage } from './entry/find-entry-page.js';
import { FleetEntriesPage } from './entering/fleet-entries-page.js';
import { PlanListPage } from './entering/plan-list-page.js';
import { PlanPage } from './entering/plan-page.js';
import { EnginesPage } from './flown/engines-page.js';
import { FlownPage } from './flown/flown-page.js';
import { LegPage } from './flown/leg-page.js';
import { TrayPage } from './flown/tray-page.js';
import { AircraftPage } from './gate/aircraft-page.js';
import { GatePage } from './gate/gate-page.js';
import { StatusSheetPage } from './gate/status-sheet-page.js';
import { WriteUpPage } from './gate/write-up-page.js';
import { ItemPage } from './item/item-page.js';
import { MelPage } from './mel/mel-page.js';
import { OpenItemsPage } from './open-items/open-items-page.js';
import { RepeatsPage } from './repeats/repeats-page.js';
import { RemindersPage } from './reminders/reminders-page.js';
import { ChangeSettingPage } from './settings/change-setting-page.js';
import { SettingsPage } from './settings/settings-page.js';
import { AuthorityDocumentPage } from './extensions/authority-document-page.js';
import { ExtensionPage } from './extensions/extension-page.js';
import { ExtensionsPage } from './extensions/extensions-page.js';
import { ZoneDataPage } from './zone-data/zone-data-page.js';
import { PeoplePage } from './people/people-page.js';
import { KeepingPage } from './record/keeping-page.js';
import { RecordPage } from './record/record-page.js';
import { RecurrencePage } from './repetitive/recurrence-page.js';
import { RegisterActPage } from './register/register-act-page.js';
import { RegisterPage } from './register/register-page.js';
import { OperatorPage } from './session/operator-page.js';
import { OwnSecretPage } from './session/own-secret-page.js';
import { SessionContext, type SessionView, type Signed, useSession } from './session/session.js';
import { SignedOnPage } from './session/signed-on-page.js';
import { SignInPage } from './session/sign-in-page.js';
import { YouPage } from './session/you-page.js';
import { Frame } from './shell/frame.js';
import { MorePage } from './shell/more-page.js';
import { Page } from './shell/page.js';
import { Read } from './shell/reading.js';

export function App() {
  return (
    <LocationProvider>
      <Entrance />
    </LocationProvider>
  );
}

/** Nobody sees a page before it is known who looks, and for which operator. The address stays what it was. */
function Entrance() {
  const session = useRead<SessionView>('/session');
  const { value, problem, readAgain } = session;
  if (problem?.status === 401) {
    return (
      <Frame signed={null}>
        <SignInPage signedIn={readAgain} />
      </Frame>
    );
  }
  if (value?.means.first) {
    return (
      <Frame signed={null}>
        <OwnSecretPage changed={() => void readAgain()} />
      </Frame>
    );
  }
  if (value === null || value.operator === null) {
    return (
      <Frame signed={null}>
        {value === null ? (
          <Page title="Proviso">
            <Read of={session}>{() => null}</Read>
          </Page>
        ) : (
          <OperatorPage session={value} current={null} chosen={readAgain} />
        )}
      </Frame>
    );
  }
  const { person, operator, operators, roles, means, failedAttempts } = value;
  const signed: Signed = { person, operator, operators, roles, means, failedAttempts, readAgain };
  return (
    <SessionContext.Provider value={signed}>
      <Frame signed={signed}>
        <Places key={operator.id} />
      </Frame>
    </SessionContext.Provider>
  );
}

/** The same page at another address begins anew: nothing typed for one item is sent for another. */
function anew(Of: ComponentType): ComponentType {
  return () => <Of key={useLocation().path} />;
}

const PAGES: [path: string, page: ComponentType][] = [
  ['/', Landing],
  ['/operators', ChangeOperator],
  ['/you', YouPage],
  ['/signed-on', SignedOnPage],
  ['/people', PeoplePage],
  ['/record', RecordPage],
  ['/record/keeping', KeepingPage],
  ['/more', MorePage],
  ['/cards', CardsPage],
  ['/cards/revisions', RevisionPage],
  ['/cards/library', LibraryPage],
  ['/repeats', RepeatsPage],
  ['/reminders', RemindersPage],
  ['/zone-data', ZoneDataPage],
  ['/settings', SettingsPage],
  ['/settings/:key', ChangeSettingPage],
  ['/aircraft', GatePage],
  ['/aircraft/:id', AircraftPage],
  ['/aircraft/:id/write-up', WriteUpPage],
  ['/aircraft/:id/status-sheet', StatusSheetPage],
  ['/aircraft/:id/left', RegisterPage],
  ['/aircraft/:id/left/:act', RegisterActPage],
  ['/aircraft/:id/day', DayPage],
  ['/aircraft/:id/plan', PlanPage],
  ['/aircraft/:id/flown', FlownPage],
  ['/aircraft/:id/flown/:leg', LegPage],
  ['/aircraft/:id/engines', EnginesPage],
  ['/movements', TrayPage],
  ['/aircraft/:id/flights/:flight', AnswerPage],
  ['/aircraft/:id/flights/:flight/acceptance', AcceptancePage],
  ['/control', ControlPage],
  ['/control/swap', SwapPage],
  ['/control/stations', StationsPage],
  ['/control/aircraft', FleetEntriesPage],
  ['/control/flights', PlanListPage],
  ['/mel', MelPage],
  ['/defects', OpenItemsPage],
  ['/extensions', ExtensionsPage],
  ['/defects/:id', ItemPage],
  ['/defects/:id/entries', FindEntryPage],
  ['/defects/:id/entries/:number', EntryPage],
  ['/defects/:id/recurrence', RecurrencePage],
  ['/defects/:id/document', DocumentPage],
  ['/defects/:id/work/:entry/:row/placard', PlacardPage],
  ['/defects/:id/work/:entry/:row/:procedure', ProcedurePage],
  ['/defects/:id/cards/:work', CardPage],
  ['/defects/:id/extension', ExtensionPage],
  ['/defects/:id/authority-document', AuthorityDocumentPage],
  ['/defects/:id/cards/:work/stop', StopCardPage],
  ['/defects/:id/:act', ActPage],
];

const ROUTES = PAGES.map(([path, page]) => ({ path, page: anew(page) }));

function Places() {
  return (
    <Router>
      {ROUTES.map(({ path, page }) => (
        <Route key={path} path={path} component={page} />
      ))}
      <Route default component={NoSuchPage} />
    </Router>
  );
}

const HOME: Record<string, string> = {
  'maintenance-control': '/control',
  dispatcher: '/control',
  engineer: '/defects',
  quality: '/record',
  administrator: '/people',
};

/** Everybody begins where their work is. */
function Landing() {
  const { roles } = useSession();
  const { route } = useLocation();
  const home = roles.map((role) => HOME[role]).find((place) => place !== undefined) ?? '/aircraft';
  useEffect(() => route(home, true), [home, route]);
  return <Page title="Proviso">{null}</Page>;
}

function ChangeOperator() {
  const { person, operators, operator, readAgain } = useSession();
  return <OperatorPage session={{ person, operators }} current={operator.id} chosen={readAgain} />;
}

function NoSuchPage() {
  return (
    <Page title="There is no such page">
      <p>
        Go to <a href="/aircraft">the aircraft</a> or <a href="/defects">the open items</a>.
      </p>
    </Page>
  );
}
