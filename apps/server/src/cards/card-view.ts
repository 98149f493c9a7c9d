/** What a page is shown of the work on one card: every step with how it stands, every account, what is still missing. */
import {
  accountsOf,
  actsOn,
  type AccountStands,
  type CardWork,
  type DefectLife,
  doneBy,
  lastingOf,
  limitsInWords,
  missingOf,
  stepsMissingBefore,
} from '#deferrals';
import { type Card, type CardStep, type Measure, type Need, PAIRS, referenceInWords, statedNeeds } from '#mel';
import { secondInHistory, wordsOfResult, wordsOfUsed } from '../defects/words-of-card-act.js';
import type { LastUsed } from './equipment-used.js';
import type { AgainstManual } from './revisions.js';

export function cardWorkView(life: DefectLife, work: CardWork, against: AgainstManual, used: LastUsed) {
  const { started, ended } = work;
  const { card } = started;
  const accounts = accountsOf(life, work);
  return {
    id: started.id,
    card: card.id,
    title: card.title,
    purpose: card.purpose,
    reference: referenceInWords(card.reference),
    procedure: started.procedure,
    forFlight: started.forFlight,
    startedBy: started.by.name,
    startedAt: started.enteredAt,
    ended: ended === null ? null : { how: HOW[ended.kind], by: ended.by.name, at: ended.enteredAt },
    cautions: [...(card.cautions ?? [])],
    steps: card.steps.map((step) => stepView(work, step, accounts, used)),
    accounts: accounts.map(accountView),
    missing: ended === null ? missingOf(life, work) : [],
    newerRevision: against.newerRevision,
    confirmed: confirmedView(against),
  };
}

const HOW = { 'card-signed': 'signed', 'card-stopped': 'stopped' } as const;

export function confirmedView({ confirmation }: AgainstManual) {
  return confirmation === null ? null : { by: confirmation.by.name, at: confirmation.by.signedAt };
}

function stepView(work: CardWork, step: CardStep, accounts: readonly AccountStands[], used: LastUsed) {
  const done = doneBy(work, step);
  const waitsFor = stepsMissingBefore(work, step).map(({ id }) => id);
  const lasting = step.kind === 'wait' || step.kind === 'run' ? lastingOf(work, step) : null;
  const last = actsOn(work, step.id).at(-1);
  const ran = last?.kind === 'card-stepped' && last.result.kind === 'ran';
  const open = waitsFor.length > 0 ? 'waits' : ran ? 'ran' : lasting ? 'begun' : 'next';
  return {
    id: step.id,
    kind: step.kind,
    text: step.text,
    cautions: [...(step.cautions ?? [])],
    needs: (step.needs ?? []).map((need) => needView(need, accounts, used)),
    licence: step.licence ? [...step.licence] : [],
    takes: step.takes ?? null,
    state: done ? 'done' : open,
    waitsFor: done ? [] : waitsFor,
    done: done
      ? {
          by: done.by.name,
          second: secondOf(work, step),
          used: usedIn(work, step),
          at: done.enteredAt,
          words: done.kind === 'card-inspected' ? done.findings : wordsOfResult(done.result, step),
        }
      : null,
    begun: lasting,
    ...asksOf(step, accounts),
  };
}

/** A wait or a run names its second person as it begins. */
function secondOf(work: CardWork, step: CardStep): string | null {
  const named = actsOn(work, step.id).findLast((act) => act.kind === 'card-stepped' && act.second !== undefined);
  return named?.kind === 'card-stepped' && named.second ? secondInHistory(named.second) : null;
}

/** Which equipment, by its number: stated with the step, or as a wait or a run began. */
function usedIn(work: CardWork, step: CardStep): string[] {
  const told = actsOn(work, step.id).findLast((act) => act.kind === 'card-stepped' && act.used !== undefined);
  return told?.kind === 'card-stepped' ? (told.used ?? []).map(wordsOfUsed) : [];
}

function needView(need: Need, accounts: readonly AccountStands[], used: LastUsed) {
  const { kind, what, calibrated = false, licence = [], account } = need;
  return {
    kind,
    what,
    calibrated,
    stated: statedNeeds({ needs: [need] }).length > 0,
    issued: accounts.find((one) => one.account.id === account)?.number ?? null,
    last: used.get(what) ?? null,
    licence: [...licence],
  };
}

/** What the step asks for; every key is there, null where its kind has no such thing. */
function asksOf(step: CardStep, accounts: readonly AccountStands[]) {
  const lasts = step.kind === 'wait' || step.kind === 'run' ? step.lasts : null;
  const counted =
    step.kind === 'out' || step.kind === 'in'
      ? accounts.find(({ account }) => account.id === step.account)
      : undefined;
  return {
    measure: step.kind === 'measure' ? measureView(step.measure) : null,
    renew:
      step.kind === 'renew' ? { part: step.part, count: step.count ?? 1, certified: step.certified ?? false } : null,
    minutes: lasts !== null && 'minutes' in lasts ? lasts.minutes : null,
    shownBy: lasts !== null && 'shownBy' in lasts ? lasts.shownBy : null,
    readings: step.kind === 'run' ? step.readings.map(measureView) : [],
    look: step.kind === 'run' ? step.look : null,
    account: counted ? accountView(counted) : null,
    inspects: step.kind === 'inspect' ? [...step.of] : [],
  };
}

const measureView = (measure: Measure) => ({
  id: measure.id,
  what: measure.what,
  unit: measure.unit,
  limits: limitsInWords(measure),
});

function accountView({ account, state, number }: AccountStands) {
  const { id, what, where, count = 1, pair, numbered = false } = account;
  const words = PAIRS[pair];
  return { id, what, where, count, numbered, state, outWord: words.out, inWord: words.in, number };
}

/** A card that may be started, in one line. */
export function offeredView(card: Card, procedure: string | null, eachDeparture: boolean) {
  return {
    card: card.id,
    title: card.title,
    purpose: card.purpose,
    reference: referenceInWords(card.reference),
    procedure,
    eachDeparture,
    steps: card.steps.length,
    minutes: card.steps.reduce((sum, { takes = 0 }) => sum + takes, 0),
  };
}
