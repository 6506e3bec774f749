// Types, lint and unit tests side by side, for the minutes between two edits.
import { spawn } from "node:child_process";

const STEPS = (args) => [
  ["types", ["tsc", "-p", ".", "--incremental", "--tsBuildInfoFile", "node_modules/.cache/tablefeed/types.json"]],
  ["lint", ["biome", "check", "--config-path=.biome.json", "--diagnostic-level=error", "."]],
  ["unit tests", ["vitest", "run", "-c", "tests/vitest.config.ts", "--project", "unit", "--reporter=dot", ...args]],
];

/** Runs all three; what a step said is shown when it failed, and the tests' summary always. Answers the exit code. */
export async function quick(root, args) {
  const start = Date.now();
  const seconds = () => `${((Date.now() - start) / 1000).toFixed(1)} s`;
  const run = ([name, words]) =>
    new Promise((resolve) => {
      const child = spawn("npx", ["--no-install", ...words], { cwd: root });
      let text = "";
      for (const stream of [child.stdout, child.stderr])
        stream.on("data", (part) => {
          text += part.toString();
        });
      child.on("close", (status) => {
        console.log(`${name}: ${status === 0 ? "fine" : "NOT fine"} after ${seconds()}`);
        if (status !== 0 || name === "unit tests") console.log(text.trim());
        resolve(status === 0);
      });
    });
  const fine = await Promise.all(STEPS(args).map(run));
  console.log(`${fine.every(Boolean) ? "All fine" : "Not fine"} after ${seconds()}.`);
  return fine.every(Boolean) ? 0 : 1;
}
