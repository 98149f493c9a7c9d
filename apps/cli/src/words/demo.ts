import type { DemoLoaded } from '../../../../seed/load.js';

/** The demo sign-ins, as they are printed at start. */
export function demoWords({ secret, signIns }: DemoLoaded): string {
  const width = Math.max(...signIns.map(({ name }) => name.length));
  const lines = signIns.map(({ name, does }) => `  ${name.padEnd(width)}  ${does}`);
  return [`demo sign-ins, secret "${secret}" (invented people and data; never for flight):`, ...lines].join('\n');
}
