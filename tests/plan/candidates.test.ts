/** Which of several tools a row is planned with, where each tool's outcome is made up here. */
import { describe, expect, it } from "vitest";
import type { Candidates } from "../../src/operations/operation.ts";
import type { Plan } from "../../src/operations/shared/types.ts";
import { bestOf } from "../../src/plan/candidates.ts";
import type { Tool } from "../../src/table/lists.ts";

type Made = { readonly verdict?: "ok" | "check" | "stop"; readonly units?: "mm" | "in" } & Partial<
  Record<"cost" | "time" | "load", number>
>;

/** The choice among tools named A, B, C …, and which of them were worked out. */
function chosen(made: readonly Made[], units: "mm" | "in" = "mm") {
  const tools = made.map((m, i) => ({ tool: String.fromCharCode(65 + i), units: m.units })) as unknown as Tool[];
  const tried: string[] = [];
  const run = (tool: Tool) => {
    tried.push(tool.tool);
    const { verdict = "ok", units: _, ...results } = made[tool.tool.charCodeAt(0) - 65]!;
    return { verdict, results } as unknown as Plan;
  };
  const offer = { tools, for: "wall" } as Candidates;
  const choice = bestOf(offer, units, run);
  if (choice) expect(choice.offer).toBe(offer);
  return { tool: choice?.tool.tool, tried: tried.join("") };
}

describe("choice of a tool (a machinist's rules)", () => {
  it("none of none; a single one without trying it", () => {
    expect(chosen([])).toEqual({ tool: undefined, tried: "" });
    expect(chosen([{ verdict: "stop" }])).toEqual({ tool: "A", tried: "" });
  });
  it("the best verdict wins whatever it costs", () => {
    expect(chosen([{ verdict: "stop", cost: 1 }, { verdict: "check", cost: 5 }, { cost: 9 }]).tool).toBe("C");
    expect(chosen([{ cost: 9 }, { verdict: "check", cost: 1 }]).tool).toBe("A");
  });
  it("then money, else time, else the load", () => {
    expect(
      chosen([
        { cost: 5, time: 1 },
        { cost: 4, time: 9 },
      ]).tool,
    ).toBe("B");
    expect(
      chosen([
        { time: 5, load: 0.1 },
        { time: 4, load: 0.9 },
      ]).tool,
    ).toBe("B");
    expect(chosen([{ load: 0.9 }, { load: 0.5 }]).tool).toBe("B");
  });
  it("within a hundredth the operation's own order decides", () => {
    expect(chosen([{ cost: 100 }, { cost: 99.1 }]).tool).toBe("A");
    expect(chosen([{ cost: 100 }, { cost: 99 }]).tool).toBe("A");
    expect(chosen([{ cost: 100 }, { cost: 98.9 }]).tool).toBe("B");
  });
  it("a tool of the other units must be a twentieth cheaper, and comes after the row's own", () => {
    expect(
      chosen([
        { cost: 96, units: "in" },
        { cost: 100, units: "mm" },
      ]),
    ).toEqual({ tool: "B", tried: "BA" });
    expect(
      chosen([
        { cost: 93, units: "in" },
        { cost: 100, units: "mm" },
      ]).tool,
    ).toBe("A");
    expect(
      chosen(
        [
          { cost: 93, units: "in" },
          { cost: 100, units: "mm" },
        ],
        "in",
      ),
    ).toEqual({ tool: "A", tried: "AB" });
    // a list that does not say is the row's own
    expect(chosen([{ cost: 100 }, { cost: 96 }, { cost: 90, units: "mm" }]).tool).toBe("C");
    expect(chosen([{ cost: 97 }, { cost: 100, units: "mm" }]).tool).toBe("A");
  });
  it("works out eight at the most, and four more once one holds", () => {
    const stops = Array.from({ length: 12 }, (): Made => ({ verdict: "stop", cost: 5 }));
    expect(chosen(stops).tried).toBe("ABCDEFGH");
    expect(chosen(stops.map(() => ({ cost: 5 }))).tried).toBe("ABCDE");
    expect(chosen([...stops.slice(0, 2), ...stops.map(() => ({ cost: 5 }))]).tried).toBe("ABCDEFG");
    expect(chosen([...stops.slice(0, 6), { cost: 5 }, { cost: 4 }, { cost: 1 }])).toEqual({
      tool: "H",
      tried: "ABCDEFGH",
    });
  });
});
