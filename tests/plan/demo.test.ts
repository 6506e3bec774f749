import { describe, expect, it } from "vitest";
import { CellError } from "../../functions/cells.ts";
import { PLAN } from "../../functions/plan.ts";
import { DEMO, DEMO_NOTES } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { planTable } from "../../src/plan/table.ts";
import { matchHeadings, RESULT_COLUMNS, ROW_COLUMNS } from "../../src/table/columns.ts";

type Cell = string | number | boolean | null | undefined;
const lists = { materials: MATERIALS, tools: TOOLS, machines: MACHINES };
const plan = (rows: readonly (readonly unknown[])[]) => planTable({ rows, ...lists });
const block = (rows: readonly (readonly unknown[])[]): any[][] =>
  PLAN(rows as any[][], MATERIALS as any[][], TOOLS as any[][], MACHINES as any[][]);
const demo = plan(DEMO);

/** Results as the contract of the planning table lists them. */
const HEADER =
  "Row|Verdict|Reasons|Limit|Load|Tool|Start diameter|Drill|Spindle speed|Surface speed|Feed per tooth|Table feed|Radial depth|Chip thickness|Passes|Spring passes|Depths|Path radius|Neck gap|Direction|Force|Power|Deflection|Stress|Major diameter|Start Z|End Z|Size|Size min|Size max|Time each|Time|Cost|Start wear value|Theoretical Rz";
const at = (heading: string) => HEADER.split("|").indexOf(heading);
const verdicts = (rows: readonly (readonly unknown[])[]) =>
  block(rows)
    .slice(1)
    .map((line) => line[at("Verdict")]);

describe("the verdicts of the demo job (independent)", () => {
  // what a skilled person expects of each row, written before the plan was
  for (const line of demo.lines) {
    const note = DEMO_NOTES[line!.row as number]!;
    it(`says ${note.expect} of row ${line!.row}: ${note.why}`, () => {
      expect(line!.verdict, line!.reasons.map((r) => r.text).join(" · ")).toBe(note.expect);
    });
  }
  it("gives the reason that the note of the row names", () => {
    const codes: Record<number, string> = {
      ...{
        90: "profile-angle",
        120: "cutter-too-large",
        150: "power-over",
        180: "hole-under-minor",
        190: "row-incomplete",
      },
      ...{
        200: "no-speed",
        220: "neck-rubs",
        230: "neck-short",
        240: "size-may-be-out",
        250: "hole-under-minor",
        270: "hole-too-shallow",
      },
      ...{
        290: "tool-stress",
        350: "hole-under-minor",
        360: "hole-over-minor",
        410: "hole-under-minor",
        430: "flat-too-wide",
      },
      ...{
        450: "pitch-differs",
        460: "cutter-too-large",
        510: "feed-not-reached",
        540: "cutter-too-large",
        570: "size-out",
      },
      ...{ 600: "chip-too-thin", 610: "unknown-material", 630: "wrong-drill", 670: "stick-out", 680: "stick-out" },
      ...{ 710: "machine-blank", 720: "units-blank" },
    };
    for (const [row, code] of Object.entries(codes)) {
      const line = demo.lines.find((l) => l!.row === Number(row))!;
      expect(
        line.reasons.map((r) => r.code),
        `row ${row}`,
      ).toContain(code);
    }
  });
});

describe("reasons (identity)", () => {
  it("gives every row that is not ok a reason, a sentence and a way out", () => {
    for (const line of demo.lines) {
      if (line!.verdict !== "ok") expect(line!.reasons.some((r) => r.severity === line!.verdict)).toBe(true);
      for (const r of line!.reasons) {
        const name = `row ${line!.row}, ${r.code}`;
        expect(r.code, name).toMatch(/^[a-z][a-z0-9-]+$/);
        expect(r.text.length, name).toBeGreaterThan(10);
        expect(r.wayOut.length, name).toBeGreaterThan(5);
        expect(r.text + r.wayOut, name).not.toMatch(/NaN|Infinity|undefined|\[object|null/);
        if (r.value !== undefined) expect(Number.isFinite(r.value), name).toBe(true);
      }
    }
  });
  it("puts them in order of weight and writes them into the cell in that order", () => {
    const weight = { stop: 2, check: 1, ok: 0 };
    demo.lines.forEach((line, i) => {
      const weights = line!.reasons.map((r) => weight[r.severity]);
      expect(weights).toEqual([...weights].sort((a, b) => b - a));
      expect(line!.verdict).toBe(["ok", "check", "stop"][Math.max(0, ...weights)]);
      expect(demo.block[i]![at("Reasons")]).toBe(line!.reasons.map((r) => r.text).join(" · "));
    });
  });
  it("names the limit with the largest load", () => {
    for (const line of demo.lines) {
      const loads = line!.limits.map((l) => l.band?.[1] ?? l.load);
      if (loads.length === 0) continue;
      expect(line!.results.load).toBe(Math.max(...loads));
      expect(line!.results.limit).toBe(line!.limits[0]!.name);
    }
  });
});

describe("the block of results (identity)", () => {
  it("has the contract's headings in their order, and a line per row in the order of the rows", () => {
    const b = block(DEMO);
    expect(b[0]!.join("|")).toBe(HEADER);
    expect(b.length).toBe(DEMO.length);
    expect(b.map((line) => line.length)).toEqual(DEMO.map(() => HEADER.split("|").length));
    expect(b.slice(1).map((line) => line[0])).toEqual(DEMO.slice(1).map((row) => row[0]));
  });
  it("holds only finite numbers and text", () => {
    for (const line of block(DEMO))
      for (const cell of line) {
        if (typeof cell === "number") expect(Number.isFinite(cell)).toBe(true);
        else {
          expect(cell).toBeTypeOf("string");
          expect(cell).not.toMatch(/NaN|Infinity|undefined|\[object/);
        }
      }
  });
  it("keeps to the row's units: inch rows a twenty-fifth of the millimetres", () => {
    for (const [i, line] of demo.lines.entries()) {
      const radius = line!.results.pathRadius;
      if (typeof radius === "number")
        expect(demo.block[i]![at("Path radius")]).toBeCloseTo(line!.units === "in" ? radius / 25.4 : radius, 12);
    }
  });
});

const columns = (rows: readonly (readonly unknown[])[], order: number[]) => rows.map((row) => order.map((i) => row[i]));
const few = DEMO.slice(0, 60);

describe("reading the table (identity)", () => {
  it("does not mind the order of the columns", () => {
    const order = DEMO[0]!.map((_, i) => i).reverse();
    expect(block(columns(few, order))).toEqual(block(few));
  });
  it("passes over unknown columns", () => {
    const wide = few.map((row, i) => ["Colour", ...row, i === 0 ? "Inspector" : "x", i === 0 ? "" : 7]);
    wide.slice(1).forEach((row) => {
      row[0] = "red";
    });
    expect(block(wide)).toEqual(block(few));
  });
  it("takes a missing optional column as blank", () => {
    const used = DEMO[0]!.map((_, i) => i).filter((i) => few.slice(1).some((row) => row[i] !== null));
    expect(used.length).toBeLessThan(DEMO[0]!.length);
    expect(block(columns(few, used))).toEqual(block(few));
  });
  it("gives a blank line for a blank row and leaves the others alone", () => {
    const gap: (Cell[] | readonly unknown[])[] = [...few.slice(0, 5), few[0]!.map(() => null), ...few.slice(5)];
    const with1 = block(gap);
    expect(with1[5]).toEqual(HEADER.split("|").map(() => ""));
    expect([...with1.slice(0, 5), ...with1.slice(6)]).toEqual(block(few));
    // a row number alone is no content
    const numbered = few[0]!.map((h) => (h === "Row" ? 15 : "  "));
    expect(block([few[0]!, numbered])[1]).toEqual(HEADER.split("|").map(() => ""));
  });
  it("does not let a bad row touch another", () => {
    const whole = block(few);
    const junk: Cell[][] = [
      few[0]!.map(() => "junk"),
      few[0]!.map(() => -1),
      few[0]!.map(() => Number.NaN),
      few[0]!.map(() => true),
      few[0]!.map((h) => (h === "Operation" ? "thread mill" : h === "Units" ? "mm" : h === "Thread" ? "M999" : null)),
      few[0]!.map((h) => (h === "Depth" ? 1e308 : h === "Operation" ? "drill" : h === "Units" ? "in" : null)),
    ];
    const machine = few[0]!.indexOf("Machine");
    for (const row of junk) {
      // the setup of a machine is shared by its rows: junk must not name one
      row[machine] = null;
      const mixed = block([...few.slice(0, 3), row, ...few.slice(3)]);
      expect(mixed[3]![at("Verdict")], JSON.stringify(row)).toBe("stop");
      expect(String(mixed[3]![at("Reasons")]).length).toBeGreaterThan(10);
      expect([...mixed.slice(0, 3), ...mixed.slice(4)]).toEqual(whole);
    }
  });
  it("plans the rest when a hole is smaller or larger than any drill", () => {
    const at0 = (h: string) => few[0]!.indexOf(h);
    for (const [operation, heading, size] of [
      ["drill", "Finish diameter", 0.1],
      ["drill", "Finish diameter", 400],
      ["thread mill", "Start diameter", 400],
    ] as const) {
      const row: Cell[] = few[0]!.map(() => null);
      row[at0("Row")] = "odd";
      row[at0("Operation")] = operation;
      row[at0("Units")] = "mm";
      row[at0("Thread")] = operation === "drill" ? null : "M6";
      row[at0("Material")] = "Steel C45 (AISI 1045)";
      row[at0("Depth")] = 10;
      row[at0(heading)] = size;
      const mixed = block([...few.slice(0, 3), row, ...few.slice(3)]);
      expect(["check", "stop"]).toContain(mixed[3]![at("Verdict")]);
      expect(mixed[3]![at("Drill")]).toBe("");
      expect([...mixed.slice(0, 3), ...mixed.slice(4)]).toEqual(block(few));
    }
  });
  it("keeps an error cell to its own row", () => {
    const rows = few.map((row) => [...row]) as unknown[][];
    const depth = DEMO[0]!.indexOf("Depth");
    rows[4]![depth] = new CellError("#DIV/0!", "division by zero");
    rows[6]![depth] = "#N/A";
    const b = block(rows);
    expect(b[4]![at("Verdict")]).toBe("stop");
    expect(b[4]![at("Reasons")]).toMatch(/#DIV\/0!/);
    expect(b[6]![at("Verdict")]).toBe("stop");
    expect(b[8]).toEqual(block(few)[8]);
  });
});

describe("other spellings of headings (identity)", () => {
  const base: Cell[][] = [
    [
      "Row",
      "Operation",
      "Units",
      "Material",
      "Machine",
      "Tool",
      "Finish diameter",
      "Depth",
      "Surface speed",
      "Feed per tooth",
    ],
    [1, "drill", "in", "Steel C45 (AISI 1045)", "Centre V3", null, 0.25, 0.5, 300, 0.003],
  ];
  const withHeadings = (...h: string[]) => [h, base[1]!];
  it("reads the shop's own words", () => {
    const wanted = block(base);
    for (const h of [
      ["Op No.", "Process", "Unit", "Matl", "Mach.", "Cutter", "Dia", "DEEP", "SFM", "IPT"],
      ["Pos.", "Bearbeitung", "Einheit", "Werkstoff", "Maschine", "Werkzeug", "Durchmesser", "Tiefe", "vc", "fz"],
      ["#Row", " operation ", "UNITS", "material", "machine", "TOOL", "Ø", "Depth", "Cutting speed", "Chip load"],
    ])
      expect(block(withHeadings(...h)), h.join()).toEqual(wanted);
  });
  it("lets a heading's own unit beat the row's", () => {
    const rows = withHeadings(
      "Row",
      "Operation",
      "Units",
      "Material",
      "Machine",
      "Tool",
      "Dia (mm)",
      "Depth [mm]",
      "vc [m/min]",
      "fz mm",
    );
    const metric = [...rows[1]!];
    [metric[6], metric[7], metric[8], metric[9]] = [6.35, 12.7, 300 * 0.3048, 0.003 * 25.4];
    const [a, b] = [block([rows[0]!, metric])[1]!, block(base)[1]!];
    a.forEach((cell, i) => {
      if (typeof cell === "number") expect(cell, HEADER.split("|")[i]).toBeCloseTo(b[i], 9);
      else expect(cell).toBe(b[i]);
    });
    // SFM and IPT are inch units even in a metric row
    const sfm = [
      ["Row", "Operation", "Units", "Material", "Machine", "Dia", "Depth", "SFM", "IPT"],
      [1, "drill", "mm", "Steel C45 (AISI 1045)", "Centre V3", 6.35, 12.7, 300, 0.003],
    ];
    expect(block(sfm)[1]![at("Spindle speed")]).toBeCloseTo(b[at("Spindle speed")], 6);
    expect(block(sfm)[1]![at("Feed per tooth")]).toBeCloseTo(0.0762, 12);
  });
  it("takes the units from the headings where no column says them", () => {
    const rows = [
      ["Row", "Operation", "Material", "Machine", "Dia (mm)", "Depth (mm)"],
      [1, "drill", "Steel C45 (AISI 1045)", "Centre V3", 6, 12],
    ];
    expect(block(rows)[1]![at("Verdict")]).not.toBe("stop");
    rows[0]![5] = "Depth (in)"; // two systems: the row's results have no unit
    expect(block(rows)[1]![at("Reasons")]).toMatch(/Units/);
  });
  it("recognises results by the words of the shop", () => {
    const key = (heading: string) => matchHeadings([heading], RESULT_COLUMNS)[0]?.column.key;
    expect(key("Drehzahl")).toBe("spindleSpeed");
    expect(key("RPM")).toBe("spindleSpeed");
    expect(key("IPM")).toBe("tableFeed");
    expect(key("Vorschub")).toBe("tableFeed");
    expect(key("Cycle time")).toBe("time");
    expect(key("Colour")).toBeUndefined();
  });
  it("never lets two columns answer to one word, nor takes one for the other", () => {
    for (const list of [ROW_COLUMNS, RESULT_COLUMNS])
      for (const column of list) {
        const match = matchHeadings([column.heading], list)[0]!;
        expect(match.column.key).toBe(column.key);
      }
  });
  it("prefers the canonical heading to another spelling of it", () => {
    const both = [
      ["Row", "Operation", "Units", "Material", "Machine", "Dia", "Finish diameter", "Depth"],
      [1, "drill", "mm", "Steel C45 (AISI 1045)", "Centre V3", 99, 6, 12],
    ];
    expect(plan(both).lines[0]!.sketch?.holeDiameter).toBe(6);
  });
});

describe("what is left off (identity)", () => {
  const row = (over: Record<string, Cell>) => {
    const cells = {
      ...{ Row: 1, Operation: "thread mill", Units: "mm", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3" },
      ...{ Tool: "TM-M6-S", Thread: "M6", "Start diameter": 5, Depth: 12, ...over },
    } as Record<string, Cell>;
    return [Object.keys(cells), Object.values(cells)];
  };
  it("says what is missing instead of guessing", () => {
    for (const [blank, code] of [
      ["Operation", "operation-blank"],
      ["Units", "units-blank"],
      ["Material", "material-blank"],
      ["Machine", "machine-blank"],
      ["Thread", "row-incomplete"],
      ["Depth", "row-incomplete"],
    ] as const) {
      const line = plan(row({ [blank]: null })).lines[0]!;
      expect(
        line.reasons.map((r) => r.code),
        blank,
      ).toContain(code);
      expect(line.verdict).toBe(blank === "Machine" ? "check" : "stop");
    }
  });
  it("names the nearest when a name is not in the list", () => {
    for (const [heading, value, near] of [
      ["Tool", "TM-M6S", "TM-M6-S"],
      ["Machine", "Center V3", "Centre V3"],
      ["Material", "Steel C45", "Steel C45 (AISI 1045)"],
    ] as const) {
      const reason = plan(row({ [heading]: value })).lines[0]!.reasons.find((r) => r.code.startsWith("unknown"))!;
      expect(reason.wayOut, heading).toContain(near);
    }
  });
  it("proposes a tool and says so", () => {
    const line = plan(row({ Tool: null, "Start diameter": null })).lines[0]!;
    expect(line.reasons.map((r) => r.code)).toContain("tool-proposed");
    expect(line.results.tool).toBeTypeOf("string");
    expect(line.results.drill).toBeTypeOf("string");
  });
  it("never stops on the drill that it chose itself", () => {
    for (const thread of [
      "M3",
      "M4",
      "M5",
      "M6",
      "M8",
      "M8x1",
      "M10",
      "M12",
      "M16",
      "M20",
      "#8-32",
      "1/4-20",
      "1/2-13",
    ]) {
      const codes = plan(row({ Thread: thread, Tool: null, "Start diameter": null })).lines[0]!.reasons.map(
        (r) => r.code,
      );
      expect(codes, thread).not.toContain("hole-under-minor");
      expect(codes, thread).not.toContain("hole-over-minor");
    }
  });
  it("reads fractions of an inch in any row", () => {
    const drill = { Operation: "drill", Thread: null, Tool: null, "Start diameter": null, Depth: 10 };
    for (const size of ["1/4", '1/4"', "6.35"])
      expect(plan(row({ ...drill, "Finish diameter": size })).lines[0]!.sketch?.holeDiameter, size).toBeCloseTo(
        6.35,
        12,
      );
  });
});

describe("PLAN as a worksheet function (identity)", () => {
  it("says which range is blank or no table", () => {
    const error = (...args: any[]) => PLAN(args[0], args[1], args[2], args[3])[0]![0] as CellError;
    const good = [DEMO, MATERIALS, TOOLS, MACHINES];
    ["rows", "materials", "tools", "machines"].forEach((name, i) => {
      for (const blank of [undefined, null, [[""]], [[null, ""]], []]) {
        const args = good.map((g, k) => (k === i ? blank : g));
        expect(error(...args)).toBeInstanceOf(CellError);
        expect(error(...args).code).toBe("#VALUE!");
        expect(error(...args).message).toMatch(new RegExp(`^${name} is blank`));
      }
    });
    expect(error([["a", "b"]], MATERIALS, TOOLS, MACHINES).message).toMatch(/Operation/);
  });
  it("plans a thousand rows in one call", () => {
    const rows = [DEMO[0]!, ...Array.from({ length: 1000 }, (_, i) => DEMO[1 + (i % (DEMO.length - 1))]!)];
    expect(verdicts(rows)).toHaveLength(1000);
  });
});

describe("PLAN remembers rows (identity)", () => {
  const call = (rows: unknown[][], tools: unknown = TOOLS) =>
    PLAN(rows as any[][], MATERIALS as any[][], tools as any[][], MACHINES as any[][]);
  const fresh = (rows: unknown[][], tools: unknown = TOOLS) => {
    const t = planTable({ rows, materials: MATERIALS, tools: tools as typeof TOOLS, machines: MACHINES }, false);
    return [[...t.header], ...t.block.map((line) => [...line])];
  };
  const table = DEMO.map((row) => [...row]) as unknown[][];
  it("and answers as if it did not: after an edit, a new row, a deleted row, another list", () => {
    expect(call(table)).toEqual(fresh(table));
    const depth = table[0]!.indexOf("Depth");
    const edited = table.map((row, i) => (i === 5 ? row.map((c, k) => (k === depth ? 12.25 : c)) : row));
    expect(call(edited)).toEqual(fresh(edited));
    const longer = [...edited, [...table[9]!]];
    expect(call(longer)).toEqual(fresh(longer));
    const shorter = table.filter((_, i) => i !== 3);
    expect(call(shorter)).toEqual(fresh(shorter));
    const fewer = TOOLS.filter((_, i) => i % 2 === 0);
    expect(call(table, fewer)).toEqual(fresh(table, fewer));
    const swapped = table.map((row) => [...row].reverse());
    expect(call(swapped)).toEqual(fresh(swapped));
  });
});

describe("the shop's own drilling oversize (identity)", () => {
  it("moves the hole that comes out, and the drill that a thread is given", () => {
    const headings = ["Operation", "Units", "Material", "Tool", "Thread", "Depth", "Drilling oversize"];
    const block = (oversize: number | null, operation: string) => {
      const row = [operation, "mm", "Steel C45 (AISI 1045)", null, "M10x1.25", 15, oversize];
      const answer = PLAN([headings, row], MATERIALS as any[][], TOOLS as any[][], MACHINES as any[][]);
      return Object.fromEntries(answer[0]!.map((h, i) => [String(h), answer[1]![i]]));
    };
    // Minor limits of M10×1.25-6H are 8.647 to 8.912: no oversize asks for the middle 8.78; with 0.05 the hole of 8.7 is
    // nearest to it, with 0.2 only 8.7 lies inside with its hole. Drill, tap and thread mill see the same drill.
    for (const [oversize, drill] of [
      [0, 8.8],
      [0.05, 8.7],
      [0.2, 8.7],
    ] as const) {
      expect(block(oversize, "drill").Size).toBeCloseTo(drill + oversize, 9);
      expect(block(oversize, "drill").Drill).toBe(`${drill} mm`);
      for (const operation of ["thread mill", "tap"]) expect(block(oversize, operation)["Start diameter"]).toBe(drill);
    }
  });
});
