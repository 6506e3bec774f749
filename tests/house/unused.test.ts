/** What nothing uses is either used or goes; what still waits stands in a list that can only grow shorter. */
import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { root } from "./files.ts";

type Issue = Record<string, { name: string }[] | string | undefined> & { file: string };

/** What knip finds, as "file: name" (or a package's name alone), sorted. */
function found(...more: string[]): string[] {
  const done = spawnSync("npx", ["--no-install", "knip", "--reporter", "json", "--no-exit-code", ...more], {
    cwd: root,
    encoding: "utf8",
  });
  const { issues } = JSON.parse(done.stdout) as { issues: Issue[] };
  return issues
    .flatMap(({ file, ...kinds }) =>
      Object.values(kinds).flatMap((entries) =>
        Array.isArray(entries)
          ? entries.map(({ name }) => (file === "package.json" || name === file ? name : `${file}: ${name}`))
          : [],
      ),
    )
    .sort();
}

/** A type that a file hands on. */
const UNUSED = ["src/callouts/callouts.ts: CalloutHeading"];

/** Formulas, lists and whole files that only tests use: each is to be called by the product or to go. */
const TESTS_ONLY = [
  "src/drill/strength.ts: drillShear",
  "src/fits/limits.ts: fitOf",
  "src/life.ts: quickestSpeed",
  "src/lists/demo.ts: BLANK_PLAN",
  "src/lists/demo.ts: DEMO_NOTES",
  "src/lists/materials.ts: MATERIAL_SOURCES",
  "src/lists/tools.ts: THREAD_MILL_USE",
  "src/mill/edge.ts: MEASURED_FROM",
  "src/mill/edge.ts: edgeLaw",
  "src/mill/edge.ts: radialShare",
  "src/mill/edge.ts: thinChipFactor",
  "src/mill/force.ts: linearEdgeForces",
  "src/mill/stability.ts: criticalDepth",
  "src/mill/stability.ts: stabilityPockets",
  "src/plan/table.ts: planTable",
  "src/thread/fit.ts: coarsestPitch",
  "src/thread/fit.ts: finestPitch",
  "src/thread/fit.ts: neckClearanceAlong",
  "src/thread/gauging.ts: gaugedPitchDiameter",
  "src/thread/passes.ts: passesForFirstDepth",
  "src/thread/profile.ts: basicMinorDiameter",
  "src/thread/profile.ts: leadAngle",
  "src/thread/profile.ts: profileDepth",
  "src/thread/swept-form.ts: approximateOvercut",
  "src/thread/swept-form.ts: flankAngleError",
  "src/thread/swept-form.ts: flankOvercut",
  "src/thread/taper-pipe.ts",
  "src/thread/tapping.ts: handbookTapTorque",
  "src/time.ts: pathTime",
  "src/tool/frequency.ts: uniformBarFrequency",
  "src/tool/stress.ts: bendingStress",
  "taskpane/desk/calc/functions.ts: knownFunctions",
];

describe("what nothing uses (house)", { timeout: 300_000 }, () => {
  it("is no file, export, type or package, but for those that wait", () => {
    expect(found()).toEqual(UNUSED);
  });
  it("is no formula and no file, but for those that only tests use", () => {
    expect(found("--production", "--include", "exports,files")).toEqual(TESTS_ONLY);
  });
});
