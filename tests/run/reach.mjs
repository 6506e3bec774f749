// Which tests pass by which fault, and how long each takes: found by running all of them once, and kept until a script changes.
import crypto from "node:crypto";
import fs from "node:fs";
import path from "node:path";

/** A file of tests of another room that takes longer to load and run (ms of processor time) is left out: it judges its own room. */
export const LONG = 2000;

const WEEK = 7 * 24 * 3600 * 1000;

/** Answers of former runs in `folder`; what nobody asked for in a week goes. */
function memory(folder) {
  fs.mkdirSync(folder, { recursive: true });
  for (const name of fs.readdirSync(folder)) {
    const file = path.join(folder, name);
    if (Date.now() - fs.statSync(file).mtimeMs > WEEK) fs.rmSync(file);
  }
  return {
    read(key) {
      const file = path.join(folder, key);
      if (!fs.existsSync(file)) return;
      fs.utimesSync(file, new Date(), new Date());
      return JSON.parse(fs.readFileSync(file, "utf8"));
    },
    write(key, answer) {
      const half = path.join(folder, `${key}.${process.pid}`);
      fs.writeFileSync(half, JSON.stringify(answer));
      fs.renameSync(half, path.join(folder, key));
    },
  };
}

/** The text of an entry names its parts, and each part's name its content. */
const keyOf = (script, near) =>
  crypto
    .createHash("sha256")
    .update(fs.readFileSync(script))
    .update(near ? "near" : "far")
    .digest("hex");

/** Counts for `bench`; `kept` is the folder of former answers. */
export function counting(root, bench, kept, progress) {
  const known = memory(kept);
  const loads = new Map();
  const passes = new Map();
  const own = new Map();
  const add = (map, id, entry) => map.set(id, [...(map.get(id) ?? []), entry]);

  async function asked({ script, test }, near) {
    const key = keyOf(script, near);
    let answer = known.read(key);
    if (answer === undefined) {
      await bench.renew();
      answer = await bench.ask({ script }, near ? 900_000 : LONG);
      if (answer === "late" && !near) answer = { long: true };
      const name = path.relative(root, test);
      if (answer === "late" || answer.broken) throw new Error(`${name} does not end: ${answer.broken ?? ""}`);
      if (answer.counted?.length === 0) throw new Error(`${name} holds no test.`);
      known.write(key, answer);
    }
    return answer;
  }

  return {
    /** Takes the tests of a file in; `near` when it judges its own room. */
    async count(judge, near) {
      if (own.has(judge.script)) return;
      own.set(judge.script, []);
      const answer = await asked(judge, near);
      if (answer.long) return;
      const name = path.relative(root, judge.test);
      for (const { place, ms, red, hits } of answer.counted) {
        // A test that is red without any fault (one that reads the text of the code, say) judges none.
        if (red !== undefined) {
          console.log(`left out, red without any fault: ${name}: ${red.slice(0, 200)}`);
          continue;
        }
        const test = { judge, script: judge.script, place, ms };
        own.get(judge.script).push(test);
        for (const id of hits) add(passes, id, test);
      }
      for (const id of answer.atLoad) add(loads, id, judge.script);
      progress(name);
    },
    /** True for a fault that some file passes by while it loads. */
    atLoad: (id) => loads.has(id),
    /** The tests that pass by a fault; what runs while a file loads concerns all its tests. */
    tests(id) {
      const whole = new Set(loads.get(id));
      return [
        ...[...whole].flatMap((script) => own.get(script)),
        ...(passes.get(id) ?? []).filter(({ script }) => !whole.has(script)).map((test) => ({ ...test, passes: true })),
      ];
    },
  };
}
