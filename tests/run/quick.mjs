// Types, lint and unit tests side by side, for the minutes between two edits.
import { spawn } from "node:child_process";
import { lint, npx, types } from "./steps.mjs";

/** With files or folders named, their slow tests run as well. */
const tests = (args) =>
  npx("vitest", "run", "-c", "tests/vitest.config.ts", "--project", "unit", "--reporter=dot").concat(
    args.length > 0 ? ["--project", "slow", ...args] : [],
  );

const STEPS = (args) => [
  ["types", types("--incremental", "--tsBuildInfoFile", "node_modules/.cache/tablefeed/types.json")],
  ["lint", lint("--diagnostic-level=error")],
  ["unit tests", tests(args)],
];

/** Runs all three; what a step said is shown when it failed, and how many tests passed. Answers the exit code. */
export async function quick(root, args) {
  const start = Date.now();
  const seconds = () => `${((Date.now() - start) / 1000).toFixed(1)} s`;
  const run = ([name, [program, ...words]]) =>
    new Promise((resolve) => {
      const child = spawn(program, words, { cwd: root, env: { ...process.env, NO_COLOR: "1" } });
      let text = "";
      for (const stream of [child.stdout, child.stderr])
        stream.on("data", (part) => {
          text += part.toString();
        });
      child.on("close", (status) => {
        console.log(`${name}: ${status === 0 ? "fine" : "NOT fine"} after ${seconds()}`);
        if (status !== 0) console.log(text.trim());
        else if (name === "unit tests") console.log(text.match(/Tests .*/)?.[0]);
        resolve(status === 0);
      });
    });
  const fine = await Promise.all(STEPS(args).map(run));
  console.log(`${fine.every(Boolean) ? "All fine" : "Not fine"} after ${seconds()}.`);
  return fine.every(Boolean) ? 0 : 1;
}
