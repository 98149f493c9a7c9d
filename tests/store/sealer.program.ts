/** Seals until its input ends. Usage: node sealer <owner url> */
import { startSealer } from '#store';

const sealer = await startSealer(process.argv[2] ?? '', {
  everyMs: 10,
  onError: (error) => process.stderr.write(`${String(error)}\n`),
});
process.stdout.write('ready\n');
process.stdin.resume().once('end', () => void sealer.stop());
