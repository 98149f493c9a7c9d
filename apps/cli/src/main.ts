/** The process behind the `proviso` command. */
import { run } from './run.js';

// Whoever reads the answer may stop early (`| head`); that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  process.exit(error.code === 'EPIPE' ? 0 : 3);
});

const { stdout, stderr, code } = await run(process.argv.slice(2));
process.stdout.write(stdout);
process.stderr.write(stderr);
process.exitCode = code;
