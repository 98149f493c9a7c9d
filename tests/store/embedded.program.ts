/** Runs a PostgreSQL on a folder until its input ends. Usage: node embedded <data folder> */
import { startEmbedded } from '#store';

const server = await startEmbedded({ dataFolder: process.argv[2] ?? '' });
const { pid, reused, ownerUrl } = server;
process.stdout.write(`${JSON.stringify({ pid, reused, ownerUrl })}\nready\n`);
process.stdin.resume().once('end', () => void server.stop());
