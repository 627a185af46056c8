import { defineConfig } from "vitest/config";

export default defineConfig({
  cacheDir: ".cache/vitest",
  test: {
    environment: "node",
    include: ["test/**/*.test.ts", "test/**/*.test.tsx"],
    pool: "forks",
    // Tests of the page wait for browsers more than they reckon: a third worker uses the two cores meanwhile.
    maxWorkers: 3,
    testTimeout: 20_000,
    hookTimeout: 60_000,
  },
});
