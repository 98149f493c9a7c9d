import { basename, dirname } from 'node:path';
import { watch } from 'chokidar';
import { layOut } from './lay-out.js';
import { takeFile, type TakingFiles } from './take-file.js';

export { layOut };

export interface WatchingFolder {
  /** Lets the file at hand come to its end. */
  stop(): Promise<void>;
}

export interface FolderOptions extends TakingFiles {
  /** How long a file must stay as it is before it is read. */
  settleMs?: number;
  /** Pause before a file is tried again that could not be handed in. */
  retryMs?: number;
  onError(error: unknown, path: string): void;
}

/** Names of files that are still being written, by the customs of programs that copy; and what is hidden. */
const UNFINISHED = /^\.|^~|~$|\.(part|partial|tmp|temp|crdownload|filepart|swp)$/i;

/**
 * Takes in every file that lies in the folder or is put into it, one at a time and each when it is whole. Files that are
 * there at the start are taken like new ones, so nothing is missed while no server ran.
 */
export async function watchFolder(options: FolderOptions): Promise<WatchingFolder> {
  const { folder, settleMs = 2000, retryMs = 5000, onError } = options;
  const incoming = [folder.root, ...folder.operators.keys()];
  const waiting = new Set<NodeJS.Timeout>();
  let working = Promise.resolve();
  let stopped = false;

  const put = (path: string): void => {
    if (stopped || !incoming.includes(dirname(path)) || UNFINISHED.test(basename(path))) return;
    working = working.then(() => (stopped ? undefined : taken(path)));
  };
  const later = (path: string, milliseconds: number): void => {
    const timer = setTimeout(() => {
      waiting.delete(timer);
      put(path);
    }, milliseconds);
    waiting.add(timer);
  };
  const taken = async (path: string): Promise<void> => {
    try {
      if ((await takeFile(path, options)) === 'unfinished') later(path, settleMs);
    } catch (error) {
      onError(error, path);
      later(path, retryMs);
    }
  };

  const watcher = watch(incoming, {
    depth: 0,
    followSymlinks: false,
    ignoreInitial: false,
    awaitWriteFinish: { stabilityThreshold: settleMs, pollInterval: Math.max(20, Math.floor(settleMs / 10)) },
  });
  watcher.on('add', put).on('error', (error) => onError(error, folder.root));
  await new Promise<void>((resolve) => watcher.once('ready', () => resolve()));
  return {
    async stop() {
      stopped = true;
      for (const timer of waiting) clearTimeout(timer);
      await watcher.close();
      await working;
    },
  };
}
