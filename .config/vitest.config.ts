import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { UsedReporter } from '../tests/support/reporter-used.js';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root,
  // Not in node_modules: scratch copies share that folder.
  cacheDir: '.test-output/cache',
  resolve: { conditions: ['development'] },
  ssr: { resolve: { conditions: ['development'], externalConditions: ['development'] } },
  test: {
    include: ['libs/**/*.spec.ts', 'apps/**/*.spec.{ts,tsx}', 'tests/**/*.spec.ts', 'seed/**/*.spec.ts'],
    globalSetup: ['tests/support/postgres.global.ts'],
    setupFiles: ['tests/support/property-seed.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    reporters: ['default', ['json', { outputFile: '.test-output/report.json' }], new UsedReporter()],
  },
});
