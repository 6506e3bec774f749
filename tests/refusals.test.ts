/** What the doc comment of a formula does not allow is refused, and the argument is named: each numeric argument of each example. */
import fs from "node:fs";
import { describe, expect, it } from "vitest";
import * as cost from "../src/cost.ts";
import * as drillCatalogue from "../src/drill/catalogue.ts";
import * as drillDeep from "../src/drill/deep.ts";
import * as drillForce from "../src/drill/force.ts";
import * as drillPoint from "../src/drill/point.ts";
import * as drillReam from "../src/drill/ream.ts";
import * as drillSizes from "../src/drill/sizes.ts";
import * as drillStart from "../src/drill/start.ts";
import * as drillStrength from "../src/drill/strength.ts";
import * as drillTapdrill from "../src/drill/tapdrill.ts";
import * as drillWhole from "../src/drill/whole.ts";
import { TradeError } from "../src/errors.ts";
import * as life from "../src/life.ts";
import * as millAntiderivative from "../src/mill/antiderivative.ts";
import * as millArc from "../src/mill/arc.ts";
import * as millBall from "../src/mill/ball.ts";
import * as millBending from "../src/mill/bending.ts";
import * as millChatter from "../src/mill/chatter.ts";
import * as millChatterCut from "../src/mill/chatter-cut.ts";
import * as millChatterRule from "../src/mill/chatter-rule.ts";
import * as millChip from "../src/mill/chip.ts";
import * as millChipSpace from "../src/mill/chip-space.ts";
import * as millCorner from "../src/mill/corner.ts";
import * as millEdge from "../src/mill/edge.ts";
import * as millEngagedSpeed from "../src/mill/engaged-speed.ts";
import * as millEngagement from "../src/mill/engagement.ts";
import * as millFlutes from "../src/mill/flutes.ts";
import * as millForce from "../src/mill/force.ts";
import * as millPower from "../src/mill/power.ts";
import * as millProfiles from "../src/mill/profiles.ts";
import * as millRoughness from "../src/mill/roughness.ts";
import * as millRunout from "../src/mill/runout.ts";
import * as millSpeed from "../src/mill/speed.ts";
import * as millStability from "../src/mill/stability.ts";
import * as millThreadbias from "../src/mill/threadbias.ts";
import * as millThreadfeed from "../src/mill/threadfeed.ts";
import * as millThreadforce from "../src/mill/threadforce.ts";
import * as millThreadnormal from "../src/mill/threadnormal.ts";
import * as millTurn from "../src/mill/turn.ts";
import * as millWallBias from "../src/mill/wall-bias.ts";
import * as millWallFeed from "../src/mill/wall-feed.ts";
import * as millWallnormal from "../src/mill/wallnormal.ts";
import * as millWear from "../src/mill/wear.ts";
import * as threadDesignation from "../src/thread/designation.ts";
import * as threadFit from "../src/thread/fit.ts";
import * as threadGauging from "../src/thread/gauging.ts";
import * as threadLimits from "../src/thread/limits.ts";
import * as threadMetric from "../src/thread/metric.ts";
import * as threadMetricDesignation from "../src/thread/metric-designation.ts";
import * as threadPasses from "../src/thread/passes.ts";
import * as threadPath from "../src/thread/path.ts";
import * as threadPipe from "../src/thread/pipe.ts";
import * as threadProfile from "../src/thread/profile.ts";
import * as threadSweep from "../src/thread/sweep.ts";
import * as threadSweptForm from "../src/thread/swept-form.ts";
import * as threadTaperPipe from "../src/thread/taper-pipe.ts";
import * as threadTapping from "../src/thread/tapping.ts";
import * as threadUnified from "../src/thread/unified.ts";
import * as threadUnifiedDesignation from "../src/thread/unified-designation.ts";
import * as threadUnifiedSeries from "../src/thread/unified-series.ts";
import * as time from "../src/time.ts";
import * as toolBeam from "../src/tool/beam.ts";
import * as toolFrequency from "../src/tool/frequency.ts";
import * as toolLimits from "../src/tool/limits.ts";
import * as toolReach from "../src/tool/reach.ts";
import * as toolStress from "../src/tool/stress.ts";
import * as toolTipMode from "../src/tool/tip-mode.ts";
import { sentence } from "./refusal.ts";

const MODULES: readonly (readonly [string, Readonly<Record<string, unknown>>])[] = [
  ["thread/designation", threadDesignation],
  ["thread/fit", threadFit],
  ["thread/gauging", threadGauging],
  ["thread/limits", threadLimits],
  ["thread/metric-designation", threadMetricDesignation],
  ["thread/metric", threadMetric],
  ["thread/passes", threadPasses],
  ["thread/path", threadPath],
  ["thread/pipe", threadPipe],
  ["thread/profile", threadProfile],
  ["thread/sweep", threadSweep],
  ["thread/swept-form", threadSweptForm],
  ["thread/taper-pipe", threadTaperPipe],
  ["thread/tapping", threadTapping],
  ["thread/unified-designation", threadUnifiedDesignation],
  ["thread/unified-series", threadUnifiedSeries],
  ["thread/unified", threadUnified],
  ["drill/catalogue", drillCatalogue],
  ["drill/deep", drillDeep],
  ["drill/force", drillForce],
  ["drill/point", drillPoint],
  ["drill/ream", drillReam],
  ["drill/sizes", drillSizes],
  ["drill/start", drillStart],
  ["drill/strength", drillStrength],
  ["drill/tapdrill", drillTapdrill],
  ["drill/whole", drillWhole],
  ["mill/antiderivative", millAntiderivative],
  ["mill/arc", millArc],
  ["mill/ball", millBall],
  ["mill/bending", millBending],
  ["mill/chatter-rule", millChatterRule],
  ["mill/chatter", millChatter],
  ["mill/chatter-cut", millChatterCut],
  ["mill/chip-space", millChipSpace],
  ["mill/chip", millChip],
  ["mill/corner", millCorner],
  ["mill/edge", millEdge],
  ["mill/engaged-speed", millEngagedSpeed],
  ["mill/engagement", millEngagement],
  ["mill/flutes", millFlutes],
  ["mill/force", millForce],
  ["mill/power", millPower],
  ["mill/profiles", millProfiles],
  ["mill/roughness", millRoughness],
  ["mill/runout", millRunout],
  ["mill/speed", millSpeed],
  ["mill/stability", millStability],
  ["mill/threadbias", millThreadbias],
  ["mill/threadfeed", millThreadfeed],
  ["mill/threadforce", millThreadforce],
  ["mill/threadnormal", millThreadnormal],
  ["mill/turn", millTurn],
  ["mill/wall-bias", millWallBias],
  ["mill/wall-feed", millWallFeed],
  ["mill/wallnormal", millWallnormal],
  ["mill/wear", millWear],
  ["tool/beam", toolBeam],
  ["tool/frequency", toolFrequency],
  ["tool/limits", toolLimits],
  ["tool/reach", toolReach],
  ["tool/stress", toolStress],
  ["tool/tip-mode", toolTipMode],
  ["time", time],
  ["life", life],
  ["cost", cost],
];

interface Refusal {
  readonly call: string;
  readonly parameter: string;
}

/** Arguments that an inner formula refuses under its own name for them. */
const INNER: Readonly<Record<string, string>> = { from: "startDepth", to: "endDepth" };
/** Its comment promises a refusal of another argument only. */
const UNSAID = ["overTurn wallSpan"];

/** The arguments of a call as they are written. */
function written(text: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let from = 0;
  for (const [i, c] of [...text].entries()) {
    if ("([{".includes(c)) depth++;
    if (")]}".includes(c)) depth--;
    if (c === "," && depth === 0) {
      parts.push(text.slice(from, i).trim());
      from = i + 1;
    }
  }
  return [...parts, text.slice(from).trim()];
}

/** Calls of the examples with one argument just beyond what its comment allows. */
function refusals(source: string): Refusal[] {
  return [
    ...source.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*export function (\w+)\(([\s\S]*?)\)(?::|\s*\{)/g),
  ].flatMap(([, comment, name, signature]) => {
    const parameters = written(signature!.replace(/<[^>]*>/g, "")).map((p) => /^\w+/.exec(p)?.[0] ?? "");
    const example = new RegExp(`^\\s*\\*\\s*${name}\\((.*)\\)[^)]*//=>`, "m").exec(comment!)?.[1];
    if (example === undefined) return [];
    const given = written(example);
    return parameters.flatMap((parameter, i) => {
      if (!/^-?[\d.]+(?:e-?\d+)?$/.test(given[i] ?? "")) return [];
      if (UNSAID.includes(`${name} ${parameter}`)) return [];
      const told = new RegExp(`@param ${parameter} - ([^@]*)`).exec(comment!)?.[1] ?? "";
      const bad = /scalar, > 0/.test(told) ? ["0", "-1"] : /scalar, ≥ 0/.test(told) ? ["-1e-9", "-1"] : [];
      return (bad.length > 0 ? [...bad, "NaN"] : []).map((value) => ({
        parameter,
        call: `${name}(${given.map((one, k) => (k === i ? value : one)).join(", ")})`,
      }));
    });
  });
}

describe("what a formula's comment does not allow (identity: the comment is the promise)", () => {
  for (const [file, module] of MODULES) {
    const all = refusals(fs.readFileSync(new URL(`../src/${file}.ts`, import.meta.url), "utf8"));
    if (all.length === 0) continue;
    it(`is refused by ${file}, which names the argument`, () => {
      for (const { call, parameter } of all) {
        let told: unknown;
        try {
          told = new Function(...Object.keys(module), `return ${call};`)(...Object.values(module));
        } catch (error) {
          told = error;
        }
        expect(told, call).toBeInstanceOf(TradeError);
        expect(sentence(told as TradeError), call).toMatch(new RegExp(`^(?:${parameter}|${INNER[parameter]}) `));
      }
    });
  }
});
