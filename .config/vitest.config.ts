import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root,
  resolve: { conditions: ['development'] },
  ssr: { resolve: { conditions: ['development'], externalConditions: ['development'] } },
  test: {
    include: ['libs/**/*.spec.ts', 'apps/**/*.spec.ts', 'tests/**/*.spec.ts', 'seed/**/*.spec.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
