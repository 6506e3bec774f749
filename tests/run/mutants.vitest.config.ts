import { defineConfig } from "vitest/config";

/** The tests that planted faults are tried on: all that need neither a browser nor the state of the tree. */
export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/{browser,house,host,desk}/**", "tests/pane/browser.test.ts", "tests/.out/**"],
    testTimeout: 60_000,
  },
});
