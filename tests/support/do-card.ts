/** Does a whole work card through the interface, as somebody does who reads each step. */
import type { ApiClient, Shapes } from './api-client.js';

export interface DoingSteps {
  defect: string;
  /** Lets minutes pass on the server's clock. */
  pass(minutes: number): void;
  /** Who inspects; absent where the card asks for none. */
  second?: ApiClient;
  /** The step before which to leave off; absent: every step. */
  until?: string;
}

export interface DoingCard extends DoingSteps {
  card: string;
  procedure?: string;
  forFlight?: string;
}

type Step = Shapes['CardStep'];

/** @returns the id of the work, started and with every step done, and not signed */
export async function doCard(by: ApiClient, doing: DoingCard): Promise<string> {
  const { defect, card, procedure, forFlight } = doing;
  await act(by, defect, 'cards', { card, ...(procedure && { procedure }), ...(forFlight && { forFlight }) });
  const { works } = await by.get<Shapes['CardsOfDefect']>(`/api/defects/${defect}/cards`);
  const work = works[0]?.id ?? '';
  await doSteps(by, work, doing);
  return work;
}

/** Every step of a card that was started. */
export async function doSteps(
  by: ApiClient,
  work: string,
  { defect, pass, second, until }: DoingSteps,
): Promise<void> {
  const view = await by.get<Shapes['CardWorkView']>(`/api/defects/${defect}/cards/${work}`);
  const { steps } = view.work;
  const { person } = await by.get<Shapes['SessionView']>('/api/session');
  const send = (step: Step, result: object) => act(by, defect, 'card-steps', { work, step: step.id, ...result });
  const mates = view.people.filter(({ id }) => id !== person.id);
  for (const step of steps) {
    if (step.id === until) return;
    if (step.state === 'done') continue;
    if (step.kind === 'inspect') {
      const body = { work, step: step.id, findings: 'nothing found' };
      await second?.sign(defect, 'card-inspections', { act: 'card-inspection', work }, body);
      continue;
    }
    for (const result of resultsOf(step)) {
      if (result.result === 'waited' || result.result === 'ran') pass(step.minutes ?? SHOWN);
      const ends = ['waited', 'ran', 'looked'].includes(result.result);
      await send(step, ends ? result : { ...result, ...(await withIt(by, { defect, work, step, mates })) });
    }
  }
}

interface Aside {
  defect: string;
  work: string;
  step: Step;
  mates: Shapes['CardWorkView']['people'];
}

/** The second person, who signs on the same device, and the equipment with its number. */
async function withIt(by: ApiClient, { defect, work, step, mates }: Aside): Promise<object> {
  const { work: now } = await by.get<Shapes['CardWorkView']>(`/api/defects/${defect}/cards/${work}`);
  const stated = now.steps.find(({ id }) => id === step.id)?.needs.filter((need) => need.stated) ?? [];
  const used = stated.map(({ what, issued, calibrated }) => ({
    what,
    number: issued ?? `N-${what}`,
    ...(calibrated && { calibratedUntil: '2099-12-31' }),
  }));
  const two = step.needs.some(({ kind }) => kind === 'second-person');
  const mate = mates.find(({ roles }) => roles.includes('commander'));
  return {
    ...(used.length > 0 && { used }),
    ...(two && { second: await secondSigns(by, { defect, work, step: step.id, person: mate?.id }) }),
  };
}

/** A second person signs in the form of whoever does the step; everybody of the demo has one secret. */
export async function secondSigns(
  by: ApiClient,
  of: { defect: string; work: string; step: string; person: string | undefined },
): Promise<{ person: string | undefined; secret: string; statement: string }> {
  const { defect, person, work, step } = of;
  return { person, ...(await by.signature(defect, { act: 'card-second', work, step })) };
}

const SHOWN = 3;

function resultsOf(step: Step): { result: string; [key: string]: unknown }[] {
  const begun = { result: 'begun', ...(step.shownBy === null ? {} : { minutes: SHOWN }) };
  switch (step.kind) {
    case 'measure':
      return [{ result: 'measured', value: readingOf(step.measure).value, unit: step.measure?.unit }];
    case 'renew':
      return [{ result: 'renewed', partNumber: 'P-1', batch: 'B-1', certificate: 'C-1', count: step.renew?.count }];
    case 'wait':
      return [begun, { result: 'waited' }];
    case 'run':
      return [
        begun,
        { result: 'ran', readings: step.readings.map(readingOf) },
        { result: 'looked', findings: 'dry' },
      ];
    case 'out':
    case 'in':
      return [{ result: step.kind, count: step.account?.count, number: `N-${step.account?.id}` }];
    default:
      return [{ result: 'done' }];
  }
}

/** A value at the edge of its limits, which is inside: "30 to 50 psi", "at most 95 C". */
function readingOf(measure: Step['measure'] | Step['readings'][number]) {
  const value = Number(/-?[\d.]+/.exec(measure?.limits ?? '')?.[0]);
  return { id: measure?.id, value, unit: measure?.unit };
}

async function act(by: ApiClient, defect: string, address: string, body: object): Promise<void> {
  const { etag } = await by.send('GET', `/api/defects/${defect}`);
  await by.post(`/api/defects/${defect}/${address}`, body, { ifMatch: etag });
}
