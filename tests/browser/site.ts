/** The pages in a browser: a server of the test's own that hands them out, and people who look at them. */
import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { build } from 'vite';
import { launchBrowser } from '../support/browser.js';
import { demoSecret, type RunningOptions, runningServer, type RunningServer } from '../support/running-server.js';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export const secret = demoSecret();

/** For what a page does a moment after it was told to. */
export const PATIENT = { interval: 20, timeout: 20_000 };

/** A telephone in a glove, a tablet on a trolley, a desk. */
export const PHONE = { width: 390, height: 844 };
export const NARROW = { width: 360, height: 740 };
export const DESK = { width: 1366, height: 900 };

export interface Look {
  viewport?: { width: number; height: number };
  colorScheme?: 'light' | 'dark';
}

export interface Site {
  server: RunningServer;
  /** A page of somebody not signed in. */
  visitor(look?: Look): Promise<Page>;
  /** A page of somebody signed in by the form. */
  as(name: string, look?: Look): Promise<Page>;
  stop(): Promise<void>;
}

interface SiteOptions {
  now: () => string;
  demo?: boolean;
  outside?: RunningOptions['outside'];
  watch?: RunningOptions['watch'];
  zoneData?: RunningOptions['zoneData'];
}

/** Builds the pages into a folder of their own: other tests may be building dist at the same moment. */
export async function aSite({ now, demo = true, watch, zoneData, outside }: SiteOptions): Promise<Site> {
  const pages = `${ROOT}/.test-output/pages-${randomUUID()}`;
  const configFile = `${ROOT}/apps/web/vite.config.ts`;
  await build({ configFile, logLevel: 'error', build: { outDir: pages, emptyOutDir: true } });
  const server = await runningServer({
    now,
    demo,
    pages,
    outside,
    ...(watch ? { watch } : {}),
    ...(zoneData ? { zoneData } : {}),
  });
  const browser: Browser = await launchBrowser();
  const contexts: BrowserContext[] = [];

  async function visitor({ viewport = PHONE, colorScheme = 'light' }: Look = {}): Promise<Page> {
    const context = await browser.newContext({ baseURL: server.url, viewport, colorScheme });
    context.setDefaultTimeout(20_000);
    contexts.push(context);
    const page = await context.newPage();
    page.on('pageerror', (error) => {
      throw error;
    });
    await page.goto('/');
    return page;
  }

  return {
    server,
    visitor,
    async as(name, look) {
      const page = await visitor(look);
      await page.getByLabel('Sign-in name').fill(name);
      await page.getByLabel('Secret').fill(secret);
      await page.getByRole('button', { name: 'Sign in' }).click();
      await page.getByRole('navigation', { name: 'Places' }).waitFor();
      return page;
    },
    async stop() {
      for (const context of contexts) await context.close();
      await browser.close();
      await server.stop();
      await rm(pages, { recursive: true, force: true });
    },
  };
}

/** A clock that starts at an instant and runs on. */
export function clockFrom(start: string): () => string {
  const begun = Date.now();
  return () => new Date(Date.parse(start) + Date.now() - begun).toISOString();
}

/** Enters the secret under the statement shown, and signs. */
export async function sign(page: Page, button: string | RegExp): Promise<void> {
  await page.getByLabel('Your secret, to sign this').fill(secret);
  await page.getByRole('button', { name: button }).click();
}

/** Ticks off that somebody went over the aircraft after the work. */
export async function goOver(page: Page): Promise<void> {
  for (const seen of ['Every tool is accounted for', 'Every panel and cowl is closed', /is what its register says/]) {
    await page.getByLabel(seen).check();
  }
}

/** Waits for each of these texts. @returns those that did not appear */
export async function missing(within: Page | Locator, ...texts: (string | RegExp)[]): Promise<(string | RegExp)[]> {
  const absent: (string | RegExp)[] = [];
  for (const text of texts) {
    const found = within.getByText(text).first();
    await found.waitFor().catch(() => absent.push(text));
  }
  return absent;
}

/** What was said at the top of the page after an act. */
export function said(page: Page): ReturnType<Page['locator']> {
  return page.locator('.done-box');
}

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

interface Finding {
  id: string;
  nodes: { html: string }[];
}

/** What axe finds, what is wider than the screen, what is too small for a glove. */
export async function faults(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const asked = JSON.stringify({ runOnly: TAGS, resultTypes: ['violations'] });
  const { violations } = await page.evaluate<{ violations: Finding[] }>(`axe.run(document, ${asked})`);
  const wider = await page.evaluate<number>('document.documentElement.scrollWidth - innerWidth');
  const found = [
    ...violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`),
    ...(wider > 0 ? [`${wider} px wider than the screen`] : []),
    ...(await page.evaluate<string[]>(TOO_SMALL)).map((html) => `too small: ${html}`),
  ];
  return found.map((fault) => `${new URL(page.url()).pathname} ${fault}`);
}

/** Links inside a line of text are as high as the text; everything that is pressed is at least 44 px. */
const TOO_SMALL = `[...document.querySelectorAll('button, .button, .big, .choice, .back, nav a, summary, select, textarea, input:not([type=radio]):not([type=checkbox])')]
  .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 43.9)
  .map((one) => one.outerHTML.slice(0, 120))`;
