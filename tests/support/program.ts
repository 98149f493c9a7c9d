import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';

/** A process that speaks in lines. A line counts only when it came whole: one cut off by a kill says nothing. */
export class Program {
  readonly lines: string[] = [];
  private readonly child: ChildProcess;
  private readonly ended: Promise<unknown>;
  /** What it wrote to its error output. */
  errors = '';

  constructor(command: string, args: readonly string[], env: Record<string, string> = {}) {
    this.child = spawn(command, args, { stdio: ['pipe', 'pipe', 'pipe'], env: { ...process.env, ...env } });
    this.ended = once(this.child, 'close');
    this.child.stderr?.on('data', (data: Buffer) => (this.errors += data.toString()));
    this.child.stdin?.on('error', () => undefined);
    let rest = '';
    this.child.stdout?.on('data', (data: Buffer) => {
      const parts = (rest + data.toString()).split('\n');
      rest = parts.pop() ?? '';
      this.lines.push(...parts);
    });
  }

  /** Waits for the line that says it is ready. @throws Error with what it wrote when it ends instead */
  async ready(isReady: (line: string) => boolean = (line) => line === 'ready'): Promise<this> {
    while (!this.lines.some(isReady)) {
      const ended = await Promise.race([this.ended.then(() => true), new Promise((go) => setTimeout(go, 10))]);
      if (ended === true) throw new Error(`The program ended before it was ready: ${this.errors}`);
    }
    return this;
  }

  kill(signal: NodeJS.Signals = 'SIGKILL'): Promise<unknown> {
    this.child.kill(signal);
    return this.ended;
  }

  /** Closes its input and waits until it ends. */
  finish(): Promise<unknown> {
    this.child.stdin?.end();
    return this.ended;
  }
}
