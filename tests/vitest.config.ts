import { defineConfig } from "vitest/config";

/** Started in a real browser. */
const BROWSER = ["tests/browser/**/*.test.ts", "tests/pane/browser.test.ts", "tests/house/{manifest,policy}.test.ts"];

/**
 * About half a second or more each: brute-force judges, other programs and big libraries, the whole workbook without a screen.
 * `npm run quick` leaves them to `npm test`.
 */
const SLOW = [
  "tests/reading.test.ts",
  "tests/callouts/{callouts,own}.test.ts",
  "tests/desk/{calc/calculator,calc/corpus,grid/axis,model/model,model/typed,package/edit,package/fuzz,package/new,package/rows,package/settings,package/unpack,package/whole,package/worker,planned}.test.ts",
  "tests/findings/{facts,rules}.test.ts",
  "tests/functions/{error-cells,property}.test.ts",
  "tests/host/{chunks,excel,light,reading,sheet}.test.ts",
  "tests/house/{certificate,faults,generated,requirements,server,toolchain,unused}.test.ts",
  "tests/mill/{chatter,chatter-brute,force,passes-left,stability,surface,thread-chatter,threadfeed,threadforce,wall-feed}.test.ts",
  "tests/operations/{blanks,columns,needs,passes-chosen,remembered,wall-size}.test.ts",
  "tests/pane/{careful,excel,faults,live,looking,missing,planning,posted,quote,session,text-format}.test.ts",
  "tests/plan/{advise,advised,chain,demo,handed,holes,money,real-chip,relief,same-part,steps,twins,ways}.test.ts",
  "tests/program/{edges,facts,faults-cut,faults-place,reader,sound,words}.test.ts",
  "tests/quote/{compare,junk,quote}.test.ts",
  "tests/table/{designations,shop-lists,spellings,taken-for-date,zero}.test.ts",
  "tests/thread/{gauging,sweep}.test.ts",
];

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    // Generous: on a busy machine a test is slow, not wrong.
    testTimeout: 180_000,
    hookTimeout: 300_000,
    maxWorkers: 2,
    experimental: { fsModuleCache: true },
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
