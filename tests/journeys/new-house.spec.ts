/**
 * From the first administrator to the first deferral: stations, aircraft, people, MEL, authorisations, a flight. Everything
 * in it is invented.
 */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { firstSecretIn, NewHouse } from './new-house-scene.js';

const MEL = readFileSync(new URL('../cases/published-rows-t1.yaml', import.meta.url), 'utf8');
const CARDS = readFileSync(new URL('../../seed/cards.yaml', import.meta.url), 'utf8');

let house: NewHouse;

beforeAll(async () => {
  house = await NewHouse.begin();
  await house.enter('ada', firstSecretIn((await house.add()).stdout));
  const other = await house.add({ code: 'QOT', name: 'Otherhouse', preset: 'faa', base: 'UTC', 'sign-in': 'otto' });
  await house.enter('otto', firstSecretIn(other.stdout));
});

afterAll(() => house.server.stop());

const steps = async () => {
  const opening = await house.as('ada').get<Shapes['Opening']>('/api/opening');
  return opening.steps.filter(({ done }) => !done).map(({ step }) => step);
};

describe('its fleet', () => {
  it('needs everything at first, and says what and where', async () => {
    expect(await steps()).toEqual([
      'stations',
      'aircraft',
      'people',
      'mel',
      'authorisations',
      'second-administrator',
    ]);
    expect((await house.proviso('operator', 'list', '--code', 'QNW')).stdout).toMatch(
      /Enter its aircraft \(administrator or/,
    );
  });

  it('gets its stations', async () => {
    for (const [code, name] of [
      ['QAA', 'Aldermouth'],
      ['QBB', 'Brackenby'],
    ])
      await house.as('ada').post('/api/stations', { code, name, zone: 'Europe/Paris' });
    const refused = async (body: object) =>
      (await house.as('ada').refused('POST', '/api/stations', { body })).errors?.map(({ pointer }) => pointer);
    expect(await refused({ code: 'QAA', name: 'Again', zone: 'UTC' })).toEqual(['/code']);
    expect(await refused({ code: 'QCC', name: 'Cray', zone: 'Nowhere/Town' })).toEqual(['/zone']);
    expect(await refused({ code: 'q c', name: 'Cray', zone: 'UTC' })).toEqual(['/code']);
  });

  it('gets its aircraft, each with what the MEL asks', async () => {
    const body = { registration: 'Q-NWA', type: 'T1', serial: 12, configuration: [], base: 'QAA' };
    const { aircraft } = (await house.as('ada').post<Shapes['AircraftEntered']>('/api/aircraft', body)).body;
    expect(aircraft).toMatchObject({ ...body, retiredAt: null });
    const refused = async (more: object) =>
      (await house.as('ada').refused('POST', '/api/aircraft', { body: { ...body, ...more } })).errors?.map(
        ({ pointer, reason }) => `${pointer} ${reason}`,
      );
    expect(await refused({})).toEqual(['/registration Q-NWA is there already']);
    expect(await refused({ registration: 'QNW-A' })).toEqual(['/registration Q-NWA is there already']);
    expect(await refused({ registration: 'Q-NWB', base: 'QZZ' })).toEqual([
      '/base there is no station QZZ; enter it first',
    ]);
    expect((await refused({ registration: 'q nwb' }))?.[0]).toMatch(/^\/registration /);
    expect((await refused({ registration: 'Q-NWB', serial: 0 }))?.[0]).toMatch(/^\/serial /);
    expect((await house.as('otto').get<Shapes['AircraftEntries']>('/api/aircraft')).aircraft).toEqual([]);
    expect(await steps()).toEqual(['people', 'mel', 'authorisations', 'second-administrator']);
  });

  it('says of an aircraft whose MEL nobody loaded that it cannot be judged', async () => {
    const { aircraft, types } = await house.as('ada').get<Shapes['AircraftEntries']>('/api/aircraft');
    expect(types).toEqual([{ type: 'T1', mel: null, configurations: [] }]);
    const fleet = await house.as('ada').get<Shapes['Fleet']>('/api/fleet');
    expect(fleet.aircraft.map(({ registration }) => registration)).toEqual(['Q-NWA']);
    expect(await house.as('ada').refused('GET', `/api/aircraft/${aircraft[0]?.id}/answer`)).toMatchObject({
      code: 'row-not-available',
      detail: 'No MEL is in force for the type T1.',
    });
  });
});

describe('its people', () => {
  it('get accounts, and each chooses a secret of their own', async () => {
    const [organisation] = (await house.as('ada').get<Shapes['Members']>('/api/people')).organisations;
    expect(organisation).toMatchObject({ name: 'Newhouse Air', approval: 'QX-AOC-7' });
    await house.as('ada').post('/api/organisations', { name: 'Newhouse Works', approval: 'QX-MNT-7' });
    expect(
      await house.as('ada').refused('POST', '/api/organisations', { body: { name: 'Twice', approval: 'QX-MNT-7' } }),
    ).toMatchObject({ errors: [{ pointer: '/approval' }] });
    await house.account('bo', 'Bo Lindt', ['administrator']);
    await house.account('mel', 'Mela Strand', ['mel-engineer']);
    await house.account('quin', 'Quin Aster', ['quality']);
    await house.account('cole', 'Cole Hatt', ['maintenance-control', 'engineer']);
    await house.account('colm', 'Colm Ferrow', ['commander']);
    await house.account('tess', 'Tess Arden', ['technician'], { licence: 'QX.66.1', organisation: organisation?.id });
    expect(await house.as('tess').refused('POST', '/api/aircraft', { body: {} })).toMatchObject({
      code: 'role-missing',
    });
  });

  it('load the MEL: a bad file by the names of its errors, a good one into force', async () => {
    const load = (text: string) => ({ body: { file: 'mel.yaml', text } });
    const bad = await house
      .as('mel')
      .refused('POST', '/api/mel', load(MEL.replace('numberRequired: 1', 'numberRequired: 9')));
    expect(bad.detail).toMatch(/^mel\.yaml: \d+ error\(s\); the first: /);
    await house.as('mel').post('/api/mel', { file: 'mel.yaml', text: MEL });
    expect((await house.as('mel').get<Shapes['AircraftEntries']>('/api/aircraft')).types[0]?.mel).toMatch(
      /, revision /,
    );
    const cards = { file: 'cards.yaml', text: CARDS.replace('kind: verify', 'kind: look') };
    const refused = await house.as('mel').refused('POST', '/api/cards', { body: cards });
    expect(refused.detail).toMatch(/^cards\.yaml: \d+ error\(s\); the first: card /);
  });

  it('may load a library of cards as long as the interface says it may be', async () => {
    const padded = `${CARDS}${'# a line that says nothing\n'.repeat(4_000)}`;
    expect(padded.length).toBeGreaterThan(100_000);
    const loaded = await house
      .as('mel')
      .post<Shapes['CardsLoaded']>('/api/cards', { file: 'cards.yaml', text: padded });
    expect(loaded.body.cards).toBeGreaterThan(5);
  });

  it('are authorised by quality', async () => {
    const { people: members, organisations } = await house.as('quin').get<Shapes['Members']>('/api/people');
    const grant = async (name: string, privileges: string, licenceCategories?: string) => {
      const id = members.find((one) => one.name === name)?.id;
      const asked = {
        number: `QNW-${name.slice(0, 4)}`,
        organisation: organisations[0]?.id ?? '',
        aircraftTypes: 'T1',
        ...(licenceCategories === undefined ? {} : { licenceCategories }),
        privileges,
        validFrom: new Date(Date.now() - 60_000).toISOString(),
      };
      const query = new URLSearchParams(asked).toString();
      const at = `/api/people/${id}`;
      const { statement } = await house.as('quin').get<Shapes['Statement']>(`${at}/authorisation-statement?${query}`);
      const sign = { secret: house.as('quin').secret, statement };
      await house.as('quin').post(`${at}/authorisations`, { ...asked, sign });
    };
    await grant('Tess Arden', 'write-up,defer,sign-procedure,inspect,release', 'B1');
    await grant('Colm Ferrow', 'write-up,sign-procedure');
    expect(await steps()).toEqual([]);
    expect((await house.proviso('operator', 'list', '--code', 'QNW')).stdout).toContain('Nothing is missing.');
  });
});

describe('the first day', () => {
  const hours = (n: number) => new Date(Date.now() + n * 3_600_000).toISOString();
  const idOf = async () =>
    (await house.as('ada').get<Shapes['AircraftEntries']>('/api/aircraft')).aircraft[0]?.id ?? '';

  it('has a flight, planned by control', async () => {
    const at = `/api/aircraft/${await idOf()}/flights`;
    const body = { number: 'QN 101', from: 'QAA', to: 'QBB', offBlockAt: hours(5), onBlockAt: hours(7) };
    const { flight } = (await house.as('cole').post<Shapes['FlightEntered']>(at, body)).body;
    expect(flight).toMatchObject({ number: 'QN 101', fromName: 'Aldermouth', toName: 'Brackenby' });
    const refused = async (more: object) =>
      (await house.as('cole').refused('POST', at, { body: { ...body, ...more } })).errors?.map(
        ({ pointer }) => pointer,
      );
    expect(await refused({ offBlockAt: hours(6), onBlockAt: hours(8) })).toEqual(['/offBlockAt']);
    expect(await refused({ offBlockAt: hours(9), onBlockAt: hours(8) })).toEqual(['/onBlockAt']);
    expect(await refused({ offBlockAt: hours(-3), onBlockAt: hours(-1) })).toEqual(['/offBlockAt']);
    expect(await refused({ from: 'QZZ' })).toEqual(['/from']);
    expect(await house.as('tess').refused('POST', at, { body })).toMatchObject({ code: 'role-missing' });
    const later = { ...body, number: 'QN 102', offBlockAt: hours(8), onBlockAt: hours(9) };
    const second = (await house.as('cole').post<Shapes['FlightEntered']>(at, later)).body.flight;
    await house.as('cole').post(`${at}/${second.id}/cancellation`, { reason: 'No passengers.' });
    expect(
      await house.as('cole').refused('POST', `${at}/${second.id}/cancellation`, { body: { reason: 'Twice.' } }),
    ).toMatchObject({ code: 'not-found' });
    const [line] = (await house.as('ada').get<Shapes['Fleet']>('/api/fleet')).aircraft;
    expect(line?.nextFlight).toMatchObject({ verdict: 'nothing-open', flight: { number: 'QN 101' } });
  });

  it('has a first defect, written up and deferred', async () => {
    const aircraft = await idOf();
    const recordedAt = new Date(Date.now() - 60_000).toISOString();
    const description = 'Auxiliary power unit does not start.';
    const item = { entry: '49-10-01', units: ['1'] };
    const written = { aircraft, origin: 'technician', description, recordedAt, item };
    const { body } = await house.as('tess').post<Shapes['ActDone']>('/api/defects', written);
    const { id } = body.defect;
    await house.as('tess').sign(id, 'deferral', { act: 'defer', entry: '49-10-01', row: '1' }, { row: '1' });
    const [line] = (await house.as('ada').get<Shapes['Fleet']>('/api/fleet')).aircraft;
    expect(line).toMatchObject({ openItems: 1, unanswered: 0 });
    expect(line?.nextDeadline?.deadline.base).toBe('Europe/Paris');
  });

  it('keeps an aircraft in the fleet while something is open on it', async () => {
    const { aircraft } = await house.as('ada').get<Shapes['AircraftEntries']>('/api/aircraft');
    const [{ id, version } = { id: '', version: 0 }] = aircraft;
    const sending = { body: { reason: 'Sold.' }, ifMatch: `"${version}"` };
    const refused = await house.as('ada').refused('POST', `/api/aircraft/${id}/retirement`, sending);
    expect(refused).toMatchObject({ code: 'aircraft-in-use' });
    expect(refused.detail).toMatch(/Q-NWA\/1, .*flight QN 101/);
  });

  it('lets another go and come back, and offers it nowhere meanwhile', async () => {
    const body = { registration: 'Q-NWC', type: 'T1' };
    const { aircraft } = (await house.as('ada').post<Shapes['AircraftEntered']>('/api/aircraft', body)).body;
    expect(aircraft).toMatchObject({ serial: null, configuration: null, base: null });
    const at = `/api/aircraft/${aircraft.id}`;
    const seen = (version: number) => ({ ifMatch: `"${version}"` });
    const fit = { serial: 14, configuration: ['LR'], reason: 'As delivered.' };
    const fitted = await house.as('ada').put<Shapes['AircraftEntered']>(`${at}/fit`, fit, seen(aircraft.version));
    expect(fitted.body.aircraft).toMatchObject({ serial: 14, configuration: ['LR'] });
    const stale = { body: { reason: 'Sold.' }, ...seen(aircraft.version) };
    expect(await house.as('ada').refused('POST', `${at}/retirement`, stale)).toMatchObject({
      code: 'changed-meanwhile',
    });
    const gone = await house
      .as('ada')
      .post<Shapes['AircraftEntered']>(`${at}/retirement`, { reason: 'Sold.' }, seen(fitted.body.aircraft.version));
    expect(gone.body.aircraft.retiredAt).not.toBeNull();
    const marks = async () =>
      (await house.as('ada').get<Shapes['Fleet']>('/api/fleet')).aircraft.map(({ registration }) => registration);
    expect(await marks()).toEqual(['Q-NWA']);
    const written = { aircraft: aircraft.id, origin: 'technician', description: 'Dent.', recordedAt: hours(-1) };
    expect(await house.as('tess').refused('POST', '/api/defects', { body: written })).toMatchObject({
      code: 'aircraft-retired',
    });
    expect(await house.as('ada').refused('GET', `${at}/answer`)).toMatchObject({ code: 'aircraft-retired' });
    expect(await house.as('ada').refused('POST', '/api/aircraft', { body })).toMatchObject({
      errors: [{ reason: 'Q-NWC is there already and left the fleet; bring it back instead' }],
    });
    await house.as('ada').post(`${at}/return`, { reason: 'Leased back.' }, seen(gone.body.aircraft.version));
    expect(await marks()).toEqual(['Q-NWA', 'Q-NWC']);
  });

  it('stands whole in both records, and the tables say what they say', async () => {
    const verified = await house.proviso('record', 'verify');
    expect(verified).toMatchObject({ stderr: '', code: 0 });
    expect(verified.stdout).toMatch(/^QNW: \d+ entries, all fit/m);
    const compared = await house.proviso('record', 'compare');
    expect(compared).toMatchObject({ stderr: '', code: 0 });
  });
});
