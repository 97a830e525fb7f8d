import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const alias = {
  '@': fileURLToPath(new URL('.', import.meta.url)).replace(/\/$/, ''),
  'server-only': fileURLToPath(new URL('./tests/empty-module.ts', import.meta.url)),
};

export default defineConfig({
  resolve: { alias },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'lib',
          include: ['tests/lib/**/*.test.ts', 'tests/outside/**/*.test.ts', 'tests/layers/**/*.test.ts'],
          environment: 'node',
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'store',
          include: ['tests/prisma/**/*.test.ts', 'tests/app/**/*.test.ts'],
          environment: 'node',
          globalSetup: ['tests/prisma/global-setup.ts'],
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'server',
          include: ['tests/server/**/*.test.ts'],
          environment: 'node',
          globalSetup: ['tests/prisma/global-setup.ts'],
          fileParallelism: false,
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});
