import { defineConfig } from "vitest/config";

/** Started in a real browser. */
const BROWSER = ["tests/browser/**/*.test.ts", "tests/pane/browser.test.ts", "tests/house/{manifest,policy}.test.ts"];

/**
 * A second or more each: brute-force judges, other programs and big libraries, the whole workbook without a screen.
 * `npm run quick` leaves them to `npm test`.
 */
const SLOW = [
  "tests/desk/{calc/calculator,calc/corpus,package/fuzz,package/new,package/whole,package/worker,planned}.test.ts",
  "tests/functions/property.test.ts",
  "tests/house/{certificate,faults,requirements,server,toolchain,unused}.test.ts",
  "tests/host/{chunks,light,sheet}.test.ts",
  "tests/mill/{chatter,force,stability,threadfeed,threadforce,wall-feed}.test.ts",
  "tests/pane/{faults,missing,planning,posted,text-format}.test.ts",
  "tests/plan/{chain,real-chip,twins}.test.ts",
  "tests/program/words.test.ts",
  "tests/quote/quote.test.ts",
  "tests/reading.test.ts",
];

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    // Generous: on a busy machine a test is slow, not wrong.
    testTimeout: 180_000,
    hookTimeout: 300_000,
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts"],
          exclude: [...BROWSER, ...SLOW, "tests/.out/**"],
          isolate: false,
        },
      },
      { extends: true, test: { name: "slow", include: SLOW } },
      { extends: true, test: { name: "browser", include: BROWSER } },
    ],
  },
});
