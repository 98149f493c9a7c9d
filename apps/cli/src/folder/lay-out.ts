/**
 * The folder that is watched: files of movement messages are put into it, or into the folder of their operator inside it;
 * what was taken in is moved to `done`, what was refused to `tray` with the reason beside it.
 */
import { lstat, mkdir, realpath } from 'node:fs/promises';
import { join } from 'node:path';
import { UsageError } from '../usage-error.js';

const CODE = /^[A-Za-z0-9][\w-]{0,19}$/;

export interface WatchedFolder {
  root: string;
  done: string;
  tray: string;
  /** Folders of operators by their path, with the code. */
  operators: ReadonlyMap<string, string>;
}

/**
 * Makes what is missing. None of these folders may be a link: it could lead anywhere.
 * @throws UsageError
 */
export async function layOut(folder: string, codes: readonly string[]): Promise<WatchedFolder> {
  const root = await realpath(folder).catch(() => {
    throw new UsageError(`--movements-folder ${folder} is not there`);
  });
  if (!(await lstat(root)).isDirectory()) throw new UsageError(`--movements-folder ${folder} is no folder`);
  const made = async (name: string): Promise<string> => {
    const path = join(root, name);
    await mkdir(path).catch(ifThere);
    if (!(await lstat(path)).isDirectory()) throw new UsageError(`${path} is no folder; a link is not followed`);
    return path;
  };
  const operators = new Map<string, string>();
  for (const code of codes.filter((one) => CODE.test(one) && !['done', 'tray'].includes(one.toLowerCase()))) {
    operators.set(await made(code), code);
  }
  return { root, done: await made('done'), tray: await made('tray'), operators };
}

function ifThere(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EEXIST') throw new UsageError(`--movements-folder: ${error.message}`);
}
