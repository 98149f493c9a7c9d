/** A page that somebody looks at tells what others did, without being read again by hand. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { aSite, clockFrom, DESK, PATIENT, type Site } from './site.js';

let site: Site;

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-11-25T09:00:00Z') });
});

afterAll(() => site.stop());

it('the fleet shows a write-up that somebody else made', async () => {
  const page = await site.as('brask', { viewport: DESK });
  await page.goto('/control');
  const row = page.getByRole('row', { name: /Q-KEA/ });
  await row.waitFor();
  expect(await row.textContent()).not.toContain('write-up');
  const technician = await site.server.signIn('odrin');
  const { aircraft } = await technician.get<Shapes['Fleet']>('/api/fleet');
  const { id } = aircraft.find(({ registration }) => registration === 'Q-KEA') as Shapes['FleetLine'];
  const told = { aircraft: id, origin: 'technician', description: 'A lamp is dark.' };
  await technician.post('/api/defects', { ...told, recordedAt: '2026-11-25T09:00:00Z' });
  await expect.poll(() => row.textContent(), PATIENT).toContain('write-up');
});
