/** Reads server-sent events one by one. */
export interface ServerEvent {
  type: string;
  /** The number that it carries; NaN where it carries none. */
  id: number;
  data: Record<string, unknown>;
}

export class EventReader {
  private readonly reader: ReadableStreamDefaultReader<string>;
  private text = '';

  /** @throws Error when the answer is no stream of events */
  constructor(response: Response) {
    if (!response.headers.get('content-type')?.startsWith('text/event-stream') || response.body === null) {
      throw new Error(`${response.status} is no stream of events`);
    }
    this.reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  }

  /** The next event; waits for it. @throws Error when the stream ends */
  async next(): Promise<ServerEvent> {
    for (;;) {
      const end = this.text.indexOf('\n\n');
      const block = end < 0 ? null : this.text.slice(0, end).trim();
      if (block !== null) this.text = this.text.slice(end + 2);
      if (block) return eventOf(block);
      if (block !== null) continue;
      const { value, done } = await this.reader.read();
      if (done) throw new Error('The stream ended.');
      this.text += value;
    }
  }

  async take(count: number): Promise<ServerEvent[]> {
    const events: ServerEvent[] = [];
    while (events.length < count) events.push(await this.next());
    return events;
  }

  /** Whether the stream ends, whatever comes before. */
  async ends(): Promise<true> {
    for (;;) if ((await this.reader.read()).done) return true;
  }

  close(): Promise<void> {
    return this.reader.cancel().catch(() => undefined);
  }
}

function eventOf(block: string): ServerEvent {
  const fields = new Map(block.split('\n').map((line) => line.split(/: ?(.*)/, 2) as [string, string]));
  const data = JSON.parse(fields.get('data') ?? '{}') as Record<string, unknown>;
  return { type: fields.get('event') ?? 'message', id: Number(fields.get('id')), data };
}
