import { defineConfig } from "vitest/config";

export default defineConfig({
  cacheDir: ".cache/vitest",
  test: {
    environment: "node",
    include: ["test/**/*.test.ts", "test/**/*.test.tsx"],
    pool: "forks",
    maxWorkers: 2,
    testTimeout: 20_000,
    hookTimeout: 60_000,
  },
});
