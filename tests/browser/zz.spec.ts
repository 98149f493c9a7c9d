import { it } from 'vitest';
import { aSite, DESK, PHONE, faults } from './site.js';
it('shots', async () => {
  let clock = '2026-01-15T03:00:00.000Z';
  const site = await aSite({ now: () => clock });
  clock = '2026-01-15T12:12:00.000Z';
  const page = await site.as('brask', { viewport: DESK });
  await page.goto('/control');
  await page.getByText('Q-KEC').first().waitFor();
  await page.screenshot({ path: '/tmp/control.png', fullPage: true });
  for (const mark of ['Q-KEC', 'Q-KEO', 'Q-KED']) {
    await page.goto('/control');
    await page.getByRole('row').filter({ hasText: mark }).getByText('The flights after it').click();
    await page.getByText('Flight by flight').waitFor();
    await page.waitForTimeout(800);
    await page.screenshot({ path: `/tmp/day-${mark}.png`, fullPage: true });
    console.log(mark, await faults(page));
  }
  await page.getByLabel('MEL entry').fill('80-12-11');
  await page.getByLabel('Of the flight').selectOption('flight.authorisedPersonAtStation');
  await page.getByLabel('authorised and equipped person at departure').selectOption('no');
  await page.getByRole('button', { name: 'What then?' }).click();
  await page.getByText('if that were so').waitFor();
  await page.screenshot({ path: '/tmp/try.png', fullPage: true });
  console.log(await faults(page));
  await page.setViewportSize(PHONE);
  console.log('wide', await page.evaluate(`[...document.querySelectorAll('main *, header *')].filter(e=>e.getBoundingClientRect().right>391).map(e=>e.outerHTML.slice(0,150))`));
  await page.screenshot({ path: '/tmp/day-phone.png', fullPage: true });
  await site.stop();
});
