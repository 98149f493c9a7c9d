/**
 * The browser that the tests walk through the pages with: CHROMIUM_PATH, else `chromium` on the PATH, else the Chromium
 * that travels inside the npm package @sparticuz/chromium together with the libraries and fonts it needs. Nothing has to
 * be installed on the machine.
 */
import { execFileSync } from 'node:child_process';
import { appendFileSync, createReadStream, createWriteStream, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { chmod, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createBrotliDecompress } from 'node:zlib';
import { type Browser, chromium } from 'playwright-core';
import { extract } from 'tar-fs';

export interface FoundBrowser {
  path: string;
  from: 'CHROMIUM_PATH' | 'PATH' | 'npm package';
  env: Record<string, string>;
}

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-dev-shm-usage',
];

export async function launchBrowser(): Promise<Browser> {
  const found = await findBrowser();
  mkdirSync('.test-output', { recursive: true });
  appendFileSync('.test-output/used.txt', `browser: ${found.path} (from ${found.from})\n`);
  return chromium.launch({
    executablePath: found.path,
    args: FLAGS,
    env: { ...(process.env as Record<string, string>), ...found.env },
  });
}

async function findBrowser(): Promise<FoundBrowser> {
  const named = process.env['CHROMIUM_PATH'];
  if (named) return { path: named, from: 'CHROMIUM_PATH', env: {} };
  const installed = onPath('chromium');
  if (installed) return { path: installed, from: 'PATH', env: {} };
  return fromPackage();
}

function onPath(program: string): string | null {
  try {
    return execFileSync('/bin/sh', ['-c', `command -v ${program}`], { encoding: 'utf8' }).trim() || null;
  } catch {
    return null;
  }
}

/** Unpacks once per user and package version; a half-unpacked folder is never taken, because it is renamed when whole. */
async function fromPackage(): Promise<FoundBrowser> {
  const require = createRequire(import.meta.url);
  const bin = join(dirname(require.resolve('@sparticuz/chromium')), '..', '..', 'bin');
  const { version } = JSON.parse(readFileSync(join(bin, '..', 'package.json'), 'utf8')) as { version: string };
  const folder = join(tmpdir(), `proviso-browser-${process.getuid?.() ?? 0}-${version}`);
  if (!existsSync(join(folder, 'chromium'))) {
    const making = await mkdtemp(join(tmpdir(), 'proviso-browser-making-'));
    await pipeline(
      createReadStream(join(bin, 'chromium.br')),
      createBrotliDecompress(),
      createWriteStream(join(making, 'chromium')),
    );
    await chmod(join(making, 'chromium'), 0o755);
    for (const pack of ['al2023', 'fonts']) {
      await pipeline(
        createReadStream(join(bin, `${pack}.tar.br`)),
        createBrotliDecompress(),
        extract(join(making, pack)),
      );
    }
    await writeFile(join(making, 'fonts', 'fonts.conf'), fontSettings(folder));
    await rename(making, folder).catch(() => rm(making, { recursive: true, force: true }));
  }
  return {
    path: join(folder, 'chromium'),
    from: 'npm package',
    env: {
      LD_LIBRARY_PATH: join(folder, 'al2023', 'lib'),
      FONTCONFIG_FILE: join(folder, 'fonts', 'fonts.conf'),
      HOME: folder,
    },
  };
}

/** The machine's own fonts where it has any, and those of the package, so that text is drawn on a bare machine too. */
function fontSettings(folder: string): string {
  const dirs = ['/usr/share/fonts', join(folder, 'fonts', 'fonts')].map((dir) => `  <dir>${dir}</dir>`);
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
${dirs.join('\n')}
  <cachedir>${join(folder, 'fonts-cache')}</cachedir>
</fontconfig>
`;
}
