/** A technician at a work card on a telephone, with a clock that the test moves on. */
import type { Page } from 'playwright-core';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { aSite, missing, secret, type Site } from './site.js';

export class CardsAtWork {
  private constructor(
    readonly site: Site,
    readonly odrin: ApiClient,
    readonly page: Page,
    private readonly clock: { now: number },
  ) {}

  static async begin(start: string): Promise<CardsAtWork> {
    const clock = { now: Date.parse(start) };
    const site = await aSite({ now: () => new Date((clock.now += 50)).toISOString() });
    const odrin = await site.server.signIn('odrin');
    return new CardsAtWork(site, odrin, await site.as('odrin'), clock);
  }

  /** Minutes pass when the test says so. */
  readonly pass = (minutes: number): void => void (this.clock.now += minutes * 60_000);

  async writtenUp(entry: string, unit: string): Promise<string> {
    const fleet = await this.odrin.get<{ aircraft: { id: string; registration: string }[] }>('/api/fleet');
    const aircraft = fleet.aircraft.find(({ registration }) => registration === 'Q-KEA')?.id;
    const item = { entry, units: [unit] };
    const said = {
      origin: 'technician',
      description: 'Found on the walk-round.',
      recordedAt: new Date(this.clock.now).toISOString(),
    };
    const written = await this.odrin.post<Shapes['ActDone']>('/api/defects', { aircraft, ...said, item });
    return written.body.defect.id;
  }

  /** Opens the card's page and waits until the step is the one worked on. */
  async atStep(text: string): Promise<void> {
    await this.page.locator('.card-steps > li.now').getByText(text).first().waitFor();
  }

  async press(button: string, fields: Record<string, string> = {}): Promise<void> {
    for (const [label, value] of Object.entries(fields)) await this.page.getByLabel(label).fill(value);
    await this.page.getByRole('button', { name: button, exact: true }).click();
  }

  /** The second person signs in the form of the step, on the same telephone. */
  async signsBeside(named: string, own = secret): Promise<void> {
    await this.page.getByLabel('Second person, there with you').selectOption({ label: named });
    const [name = ''] = named.split(',');
    await this.page.getByText(/I am the second person at step/).waitFor();
    await this.page.getByLabel(`Secret of ${name}, to sign this`).fill(own);
  }

  /** The clock of the device is set an hour ahead under the open page. @returns what the countdown shows then, for three seconds */
  setsDeviceAhead(): Promise<string[]> {
    return this.page.evaluate<string[]>(`(async () => {
      const real = Date.now.bind(Date);
      Date.now = () => real() + 3_600_000;
      const seen = new Set();
      for (let times = 0; times < 30; times += 1) {
        await new Promise((go) => setTimeout(go, 100));
        seen.add(document.querySelector('[role=timer]')?.textContent ?? 'nothing');
      }
      return [...seen];
    })()`);
  }

  /** @returns the paragraphs that no refusal on the page says word for word */
  async unsaid(...whole: string[]): Promise<string[]> {
    const absent: string[] = [];
    for (const one of whole) {
      const paragraph = this.page.getByRole('alert').getByText(one, { exact: true });
      await paragraph.waitFor().catch(() => absent.push(one));
    }
    return absent;
  }

  /** @returns the words that no refusal on the page holds */
  stopped(...words: (string | RegExp)[]): Promise<(string | RegExp)[]> {
    return missing(this.page.getByRole('alert'), ...words);
  }

  stop(): Promise<void> {
    return this.site.stop();
  }
}
