import { defineConfig } from "vitest/config";

export default defineConfig({
  cacheDir: ".cache/vitest",
  test: {
    environment: "node",
    include: ["test/**/*.test.ts", "test/**/*.test.tsx"],
    pool: "forks",
    maxWorkers: 2,
    // Files share what they import: reading the program anew for each took a quarter of the whole run.
    isolate: false,
    // A test of the page waits for a browser that shares two cores with other tests; none is a measure of speed.
    testTimeout: 60_000,
    hookTimeout: 60_000,
    expect: { poll: { timeout: 20_000 } },
  },
});
