/** An operator and its first administrator are made by one command: whole or not at all, recorded, and beside others. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { firstSecretIn, NewHouse } from './new-house-scene.js';

let house: NewHouse;

beforeAll(async () => {
  house = await NewHouse.begin();
});

afterAll(() => house.server.stop());

const anybody = async () => (await house.server.visitor().get<Shapes['Anybody']>('/api/opening/anybody')).anybody;

describe('the operator', () => {
  it('is nowhere at first, and the server says so', async () => {
    expect(await anybody()).toBe(false);
    expect((await house.proviso('operator', 'list')).stdout).toMatch(/^There is no operator yet\. .*operator add/);
  });

  it.each<[string, Parameters<NewHouse['add']>[0], RegExp]>([
    ['a code in small letters', { code: 'qnw' }, /^proviso: --code is not 2 to 8 capital letters.*nothing was made/],
    ['a zone that is none', { base: 'Europe/Atlantis' }, /^proviso: --base is neither UTC nor/],
    ['a preset that is none', { preset: 'eu' }, /^proviso: --preset is none of easa, faa/],
    ['a name of blanks', { administrator: '  ' }, /^proviso: --administrator is blank/],
    ['a name too long', { name: 'x'.repeat(121) }, /^proviso: --name is longer than 120/],
  ])('is refused with %s', async (_what, more, said) => {
    const { stderr, stdout, code } = await house.add(more);
    expect({ stdout, code }).toEqual({ stdout: '', code: 2 });
    expect(stderr).toMatch(said);
    expect(await anybody()).toBe(false);
  });

  it('is made with its first administrator, beside the running server', async () => {
    const { stdout, stderr, code } = await house.add();
    expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
    const first = firstSecretIn(stdout);
    expect(stdout).toMatch(
      /^QNW is made: Newhouse Air, days of Europe\/Paris, preset easa\.\nAda Brenn signs in as ada/,
    );
    expect(await anybody()).toBe(true);
    const early = await house.client(first).signIn('ada');
    expect(await early.refused('GET', '/api/fleet')).toMatchObject({ code: 'no-operator-chosen' });
    const session = await (await house.enter('ada', first)).get<Shapes['SessionView']>('/api/session');
    expect(session).toMatchObject({ operator: { code: 'QNW', invented: false, base: 'Europe/Paris' } });
    expect(session.roles).toEqual(['administrator']);
    expect(
      await house.server.visitor().refused('POST', '/api/session', { body: { name: 'ada', secret: first } }),
    ).toMatchObject({ code: 'sign-in-failed' });
  });

  it('is not made twice, nor another with a taken sign-in name, and nothing of it stays', async () => {
    const again = await house.add({ 'sign-in': 'bea' });
    expect(again.stderr).toMatch(
      /^proviso: --code is there already: Newhouse Air, base Europe\/Paris; nothing was made/,
    );
    const taken = await house.add({ code: 'QOT', approval: 'QX-AOC-8' });
    expect(taken.stderr).toMatch(/^proviso: --sign-in is taken: somebody on this server signs in as ada; nothing/);
    const { stdout } = await house.proviso('operator', 'list', '--json');
    expect((JSON.parse(stdout) as { code: string }[]).map(({ code }) => code)).toEqual(['QNW']);
  });

  it('has its making as the first entries of its record', async () => {
    const [{ id } = { id: '' }] = await house.server.store.operatorsServed();
    const told = await house.server.store.withOperator(id, null, (tx) =>
      tx.query<{ what: string; who: string | null }>(
        'select what, who from record_entry where operator_id = $1 order by seq',
        [id],
      ),
    );
    expect(told.slice(0, 3)).toEqual([
      { what: 'operator.made', who: null },
      { what: 'person.joined', who: null },
      { what: 'rows.told', who: null },
    ]);
  });

  it('stands beside a second one, which sees nothing of it', async () => {
    const other = await house.add({ code: 'QOT', name: 'Otherhouse', preset: 'faa', base: 'UTC', 'sign-in': 'otto' });
    const first = firstSecretIn(other.stdout);
    const otto = await house.enter('otto', first);
    expect(await otto.get('/api/settings')).toMatchObject({ preset: 'faa' });
    const names = (await otto.get<Shapes['Members']>('/api/people')).people.map(({ name }) => name);
    expect(names).toEqual(['Ada Brenn']);
  });

  it('gives another first secret to an administrator who never used it, and to nobody else', async () => {
    const late = ['operator', 'administrator', '--code', 'QNW'];
    const made = await house.proviso(...late, '--sign-in', 'bo', '--administrator', 'Bo Lindt');
    expect(made.stdout).toMatch(/^Bo Lindt administers Newhouse Air from now on\./);
    const again = await house.proviso(...late, '--sign-in', 'bo', '--json');
    const { firstSecret, isNew } = JSON.parse(again.stdout) as { firstSecret: string; isNew: boolean };
    expect(isNew).toBe(false);
    await house.enter('bo', firstSecret);
    expect((await house.proviso(...late, '--sign-in', 'bo')).stderr).toMatch(/--sign-in has a secret of their own/);
    expect((await house.proviso(...late, '--sign-in', 'otto')).stderr).toMatch(/--sign-in is taken/);
    expect((await house.proviso(...late, '--sign-in', 'cy')).stderr).toMatch(/--administrator is missing/);
    expect((await house.proviso('operator', 'administrator', '--code', 'QXX', '--sign-in', 'cy')).stderr).toMatch(
      /--code is no operator of this server/,
    );
  });
});
