import { startEmbedded, type EmbeddedPostgres } from '#store';

/** Somebody writing: a program of its own with several writers at once, to be killed in the middle. */
export interface Writing {
  /** Ids of what was acknowledged, growing while it writes. It is what the clients were told, and so the truth. */
  readonly acknowledged: readonly string[];
  /** Ends it as `kill -9` does. */
  kill(): Promise<void>;
}

export interface KillRounds {
  dataFolder: string;
  rounds: number;
  /** Makes the choice of victims and moments repeatable. */
  seed: number;
  /** The latest moment, counted from the first acknowledgement; absent: 400 ms. */
  latestMs?: number;
  /** Starts writing against a database that runs, and gives it back once it writes. */
  start(database: EmbeddedPostgres): Promise<Writing>;
  /** Looks at the database after it was restarted. `acknowledged` is everything of all rounds so far. */
  check(database: EmbeddedPostgres, acknowledged: readonly string[], round: string): Promise<void>;
}

/** Who is killed in a round. A killed database ends its writers too: they are left to find out, then killed as well. */
export type Victim = 'writers' | 'database' | 'database and writers';
const victims: Victim[] = ['writers', 'database', 'database and writers'];

/**
 * Lets writers write, kills them or the database or both at a random moment, starts the database again and checks; so
 * many rounds on the same data.
 * @returns what happened, one line a round
 */
export async function killRounds({
  dataFolder,
  rounds,
  seed,
  latestMs = 400,
  start,
  check,
}: KillRounds): Promise<string[]> {
  const chance = random(seed);
  const acknowledged: string[] = [];
  const told: string[] = [];
  for (let n = 1; n <= rounds; n += 1) {
    const victim = victims[Math.floor(chance() * victims.length)] as Victim;
    const moment = Math.floor(20 + chance() * (latestMs - 20));
    const database = await startEmbedded({ dataFolder });
    const writing = await start(database);
    while (writing.acknowledged.length === 0) await pause(1);
    await pause(moment);
    await kill(victim, database, writing);
    acknowledged.push(...writing.acknowledged);
    const round = `round ${n} of seed ${seed}: ${victim} killed after ${moment} ms`;
    told.push(`${round}, ${writing.acknowledged.length} acknowledged`);
    await check(await startEmbedded({ dataFolder }), acknowledged, round);
  }
  await (await startEmbedded({ dataFolder })).stop();
  return told;
}

async function kill(victim: Victim, database: EmbeddedPostgres, writing: Writing): Promise<void> {
  if (victim !== 'writers') process.kill(database.pid, 'SIGKILL');
  if (victim === 'database') await pause(50);
  await writing.kill();
}

function pause(ms: number): Promise<void> {
  return new Promise((go) => setTimeout(go, ms));
}

/** A small generator (mulberry32): the same seed gives the same rounds. */
function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
