/** Placards of a deferral, printed and read back: the words by a reader of PDF, the code by a reader of codes. */
import jsQRModule from 'jsqr';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { pixelsOf } from '../support/look-at-pdf.js';
import { readPdf } from '../support/read-pdf.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

const jsQR = jsQRModule as unknown as typeof jsQRModule.default;
const POINTS_PER_MM = 72 / 25.4;
let server: RunningServer;
let technician: ApiClient;
let items: Shapes['DefectLine'][];

beforeAll(async () => {
  server = await runningServer({ now: () => '2026-01-15T12:12:00.000Z', demo: true });
  technician = await server.signIn('odrin');
  const { defects } = await technician.get<Shapes['DefectList']>('/api/defects');
  items = defects.filter(({ placard }) => placard !== null);
});

afterAll(() => server.stop());

async function printed(id: string, size: string): Promise<Uint8Array> {
  const response = await technician.page(`/api/defects/${id}/placards.pdf?size=${size}`);
  expect([response.status, response.headers.get('content-type')]).toEqual([200, 'application/pdf']);
  return new Uint8Array(await response.arrayBuffer());
}

describe.each(['a4', 'roll'])('placards on %s', (size) => {
  it('carry the text of the row, where they are fitted, the number of the deferral and its last day', async () => {
    expect(items.length).toBeGreaterThan(2);
    for (const { id, number, placard, deadline } of items) {
      const { pages, sizes } = await readPdf(await printed(id, size));
      expect(pages[0]).toContain(placard?.text.replace(/\s+/g, ' '));
      expect(pages[0]).toContain(placard?.position.replace(/\s+/g, ' '));
      expect(pages[0]).toContain(`${number}-1`);
      if (deadline?.lastDay) expect(pages[0]).toContain(String(Number(deadline.lastDay.slice(8))));
      expect(pages[0]).toContain('INVENTED, never for flight');
      const width = (sizes[0]?.[0] ?? 0) / POINTS_PER_MM;
      expect(Math.abs(width - (size === 'roll' ? 62 : 210))).toBeLessThan(0.1);
    }
  });

  it('carry a code that opens the deferral', async () => {
    const [item] = items;
    const { data, width, height } = await pixelsOf(
      await printed(item?.id ?? '', size),
      1,
      3,
      size === 'roll' ? 1 : 0.5,
    );
    expect(jsQR(data, width, height)?.data).toBe(`${server.url}/defects/${item?.id}`);
  });
});

describe('a placard that the crew fitted', () => {
  const fitted = { text: 'DO NOT USE', where: 'seat 12C', tag: 'crew sheet 4' };

  it('is entered by the commander, is left on the aircraft, and stands in for no placard of a row', async () => {
    const commander = await server.signIn('hebba');
    const owed = items.find(({ placard }) => placard?.fitted) as Shapes['DefectLine'];
    const before = await technician.get<Shapes['DefectView']>(`/api/defects/${owed.id}`);
    const fittedOnes = before.left.filter(({ kind }) => kind === 'placard').map(({ id }) => id);
    await technician.sign(owed.id, 'undone', { act: 'undo' }, { items: fittedOnes });
    const ifMatch = await commander.seen(owed.id);
    const text = owed.placard?.text.slice(0, 300);
    await commander.post(`/api/defects/${owed.id}/crew-placard`, { ...fitted, text }, { ifMatch });
    const view = await commander.get<Shapes['DefectView']>(`/api/defects/${owed.id}`);
    expect(view.left.at(-1)).toMatchObject({ kind: 'placard', where: fitted.where, tag: fitted.tag });
    expect(view.history.at(-1)?.words).toContain(`TEMPORARY, fitted by the crew: ${text}`);
    expect(view.defect.placard?.fitted).toBe(false);
  });

  it('is not entered by anybody else', async () => {
    const ifMatch = await technician.seen(items[0]?.id ?? '');
    const tried = await technician.refused('POST', `/api/defects/${items[0]?.id}/crew-placard`, {
      body: fitted,
      ifMatch,
    });
    expect(tried).toMatchObject({ code: 'role-missing' });
  });
});

describe('no placard', () => {
  it('is printed for an item that asks for none, nor of another operator, nor in another size', async () => {
    const { defects } = await technician.get<Shapes['DefectList']>('/api/defects');
    const bare = defects.find(({ placard, brought }) => placard === null && brought.length === 0);
    const none = await technician.refused('GET', `/api/defects/${bare?.id}/placards.pdf`);
    expect(none).toMatchObject({
      code: 'not-found',
      detail: expect.stringContaining('No placard is asked for') as string,
    });
    const elsewhere = await server.signIn('kesh');
    expect(await elsewhere.refused('GET', `/api/defects/${items[0]?.id}/placards.pdf`)).toMatchObject({
      code: 'not-found',
    });
    expect(await technician.refused('GET', `/api/defects/${items[0]?.id}/placards.pdf?size=a3`)).toMatchObject({
      code: 'invalid-input',
    });
  });
});
