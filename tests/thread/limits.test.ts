import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { parseThread } from "../../src/thread/designation.ts";
import { threadLength, threadLimits, threadSize } from "../../src/thread/limits.ts";
import { metricLimits } from "../../src/thread/metric.ts";
import { pipeLimits } from "../../src/thread/pipe.ts";
import type { Thread, ThreadElement, ThreadLimit } from "../../src/thread/types.ts";
import { unifiedLimits } from "../../src/thread/unified.ts";
import metric from "../published/metric-limits.json" with { type: "json" };
import unified from "../published/unified-limits.json" with { type: "json" };
import { sentence } from "../refusal.ts";

type Row = Record<string, string> & { source: string; thread: string; class: string };

/** A printed value and what the thread library says, both as printed text. */
function compare(file: { rows: unknown[] }): { checked: number; wrong: string[] } {
  const wrong: string[] = [];
  let checked = 0;
  for (const row of file.rows as Row[]) {
    const { source, thread: name, class: cls, ...fields } = row;
    const thread = parseThread(`${name}-${cls}`);
    for (const [field, printed] of Object.entries(fields)) {
      checked++;
      const digits = printed.split(".")[1]?.length ?? 0;
      const value = computed(thread, field, name, cls);
      // The library rounds as the standard does, so the number is the printed one and not only close to it.
      if (value.toFixed(digits) !== printed || Math.abs(value - Number(printed)) > 1e-9) {
        wrong.push(`${name} ${cls} ${field}: printed ${printed} (${source}), computed ${value}`);
      }
    }
  }
  return { checked, wrong };
}

function computed(thread: Thread, field: string, name: string, cls: string): number {
  const size = (e: ThreadElement, l: ThreadLimit) => threadSize(thread, e, l);
  switch (field) {
    case "allowance":
      return Number((size("major", "basic") - size("major", "max")).toFixed(9));
    case "unr_minor_max":
      return threadSize(parseThread(`${name.replace(" UN", " UNR")}-${cls}`), "minor", "max");
    case "Td2_um":
      return Math.round((size("pitch", "max") - size("pitch", "min")) * 1000);
    case "Td_um":
      return Math.round((size("major", "max") - size("major", "min")) * 1000);
    default: {
      const [element, limit] = field.split("_") as [string, ThreadLimit];
      return size(element === "pd" ? "pitch" : (element as ThreadElement), limit);
    }
  }
}

describe("limits of size (published)", () => {
  it("agree with every printed Unified value to the last digit", () => {
    const { checked, wrong } = compare(unified);
    expect(wrong).toEqual([]);
    expect(checked).toBeGreaterThan(2000);
  });

  it("agree with every printed metric value to the last digit", () => {
    const { checked, wrong } = compare(metric);
    expect(wrong).toEqual([]);
    expect(checked).toBeGreaterThan(450);
  });

  it("name a source for every printed value", () => {
    for (const file of [unified, metric]) {
      for (const row of file.rows) expect(Object.keys(file.sources)).toContain(row.source);
    }
  });

  it("agree with the G1/4, G1/2, G1 and G3 rows of ISO 228-1 (from memory)", () => {
    const g = (t: string, e: ThreadElement, l: ThreadLimit) => threadSize(parseThread(t), e, l);
    expect(g("G1/4", "pitch", "max")).toBe(12.426);
    expect(g("G1/4", "minor", "max")).toBe(11.89);
    expect(g("G1/4A", "pitch", "min")).toBe(12.176);
    expect(g("G1/4B", "pitch", "min")).toBe(12.051);
    expect(g("G1/4A", "major", "min")).toBe(12.907);
    expect(g("G1/2", "minor", "max")).toBe(19.172);
    expect(g("G1/2A", "pitch", "min")).toBe(19.651);
    expect(g("G1", "pitch", "max")).toBe(31.95);
    expect(g("G1A", "major", "min")).toBe(32.889);
    expect(g("G3A", "major", "min")).toBe(87.45);
    expect(g("G3", "pitch", "max")).toBe(86.622);
  });
});

describe("limits that a standard leaves open", () => {
  const open: [string, ThreadElement, ThreadLimit][] = [
    ["1/2-13 UNC-2B", "major", "max"],
    ["1/2-13 UNC-2A", "minor", "min"],
    ["M6-6H", "major", "max"],
    ["M6-6g", "minor", "min"],
    ["G1/4", "major", "max"],
    ["G1/4A", "minor", "min"],
    ["1/4-28 UNJF-3A", "minor", "max"],
    ["M1-6H", "pitch", "max"],
  ];
  it.each(open)("says of %s that %s %s is open and why", (text, element, limit) => {
    try {
      threadSize(parseThread(text), element, limit);
      expect.unreachable();
    } catch (e) {
      expect(e).toBeInstanceOf(TradeError);
      expect((e as TradeError).code).toBe("unknown");
      expect((e as TradeError).parameter).toBe("limit");
      expect(sentence(e as TradeError).length).toBeGreaterThan(40);
    }
  });

  it("has the basic sizes of every thread all the same", () => {
    for (const text of ["1/2-13 UNC-2A", "M6-6g", "G1/4A", "1/4-28 UNJF-3B", "M1-8H"]) {
      for (const element of ["major", "pitch", "minor"] as const) {
        expect(threadSize(parseThread(text), element, "basic")).toBeGreaterThan(0);
      }
    }
  });
});

describe("limits of size (identity)", () => {
  it("are computed once for a thread", () => {
    const thread = parseThread("3/4-10 UNC-2B");
    expect(threadLimits(thread)).toBe(threadLimits(thread));
    expect(threadLimits(thread)).toEqual(unifiedLimits(thread));
    expect(threadLimits(parseThread("M6"))).toEqual(metricLimits(parseThread("M6")));
    expect(threadLimits(parseThread("G1"))).toEqual(pipeLimits(parseThread("G1")));
  });

  it("keep the decimals of the thread's own unit and convert to the other by 25.4", () => {
    const inch = parseThread("1/2-13 UNC-2B");
    expect(threadLength(0.4565, inch, "in")).toBe(0.4565);
    expect(threadLength(0.4565, inch, "mm")).toBeCloseTo(11.5951, 10);
    const mm = parseThread("M6");
    expect(threadLength(5.153, mm, "mm")).toBe(5.153);
    expect(threadLength(25.4, mm, "in")).toBeCloseTo(1, 12);
  });
});
