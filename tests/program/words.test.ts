/** The words of a row: their geometry from first principles, the direction table, length and time, twins and mirrors. */
import { describe, expect, it } from "vitest";
import { DEMO } from "../../src/lists/demo.ts";
import { alarms, check, planned, type RowCells, toolOf, withoutRamp, words } from "./shop.ts";

const demoRows: RowCells[] = DEMO.slice(1).map((cells) =>
  Object.fromEntries(DEMO[0]!.map((heading, i) => [String(heading), cells[i] as string | number | null])),
);
const byName = (name: number) => demoRows.find((row) => row.Row === name)!;

/** Words of one block, read by the test itself. */
const read = (block: string) =>
  Object.fromEntries(
    [...block.replace(/\([^)]*\)/g, "").matchAll(/([A-Z])(-?[\d.]+)/g)].map(([, letter, value]) => [
      letter,
      Number(value),
    ]),
  ) as Record<string, number | undefined>;

interface Step {
  g: number;
  from: [number, number, number];
  to: [number, number, number];
  centre?: [number, number];
  radius?: number;
  /** Signed angle: positive counter-clockwise [rad]. */
  angle?: number;
  length: number;
  /** Directions of travel in the plane at both ends. */
  tangents?: [[number, number], [number, number]];
}

/** Moves of a listing of one row, in the row's units, by plain geometry. */
function steps(listing: readonly string[]): Step[] {
  let at: [number, number, number] = [0, 0, Number.NaN];
  const list: Step[] = [];
  for (const block of listing) {
    const w = read(block);
    const g = [0, 1, 2, 3].includes(w.G ?? -1) ? w.G! : -1;
    if (g < 0 || (w.X === undefined && w.Y === undefined && w.Z === undefined)) continue;
    const to: [number, number, number] = [w.X ?? at[0], w.Y ?? at[1], w.Z ?? at[2]];
    const step: Step = { g, from: at, to, length: Math.hypot(to[0] - at[0], to[1] - at[1], to[2] - at[2]) };
    if (g >= 2) {
      const centre: [number, number] = [at[0] + w.I!, at[1] + w.J!];
      const a0 = Math.atan2(at[1] - centre[1], at[0] - centre[0]);
      const a1 = Math.atan2(to[1] - centre[1], to[0] - centre[0]);
      const sense = g === 3 ? 1 : -1;
      let angle = sense * (a1 - a0);
      while (angle <= 1e-6) angle += 2 * Math.PI;
      const radius = Math.hypot(w.I!, w.J!);
      const along = (a: number): [number, number] => [-sense * Math.sin(a), sense * Math.cos(a)];
      Object.assign(step, { centre, radius, angle: sense * angle, tangents: [along(a0), along(a1)] });
      step.length = Math.hypot(radius * angle, to[2] - at[2]);
    }
    list.push(step);
    at = to;
  }
  return list;
}

describe("the words of a thread (independent)", () => {
  for (const name of [60, 70, 80, 210, 400, 440, 560, 580, 640, 650]) {
    const row = byName(name);
    const [plan] = planned([row]);
    const unit = row.Units === "in" ? 25.4 : 1;
    const external = name === 650;
    it(`row ${name} lies on its helix: radius, pitch, hand, ends`, () => {
      const path = steps(words([row]));
      const helix = path.filter((s) => s.g >= 2 && Math.hypot(s.centre![0], s.centre![1]) < 1e-9);
      const last = path.map((s) => s.g).lastIndexOf(0);
      expect(last).toBe(path.length - 1);
      const radius = plan!["Path radius"] / unit;
      for (const s of helix.slice(-1)) expect(s.radius!).toBeCloseTo(radius, row.Units === "in" ? 3 : 2);
      const pitches: Record<number, number> = { 60: 1.25, 70: 1.25, 80: 1, 210: 1, 640: 1.75, 650: 1.5 };
      const pitch = pitches[name] ?? { 400: 1 / 16, 440: 1 / 13, 560: 1 / 13, 580: 1 / 16 }[name]!;
      for (const s of helix) {
        const perTurn = ((s.to[2] - s.from[2]) * 2 * Math.PI) / s.angle!;
        // a right-hand helix rises counter-clockwise; the rounding of Z at both ends of a piece
        const rounding = ((row.Units === "in" ? 1e-4 : 1e-3) * 2 * Math.PI) / Math.abs(s.angle!);
        expect(Math.abs(perTurn - (name === 580 ? -pitch : pitch))).toBeLessThan(rounding * 1.01);
      }
      // bottom: the profile's middle at the thread's depth, so the tip stands lower by its distance
      const tip = toolOf(String(plan!.Tool))["Tip to profile"] / unit;
      const low = Math.min(...helix.flatMap((s) => [s.from[2], s.to[2]]));
      expect(low).toBeCloseTo(-(row.Depth as number) - tip, row.Units === "in" ? 3 : 2);
    });
    it(`row ${name} goes in and out without a corner`, () => {
      const path = steps(words([row]));
      for (let n = 1; n < path.length; n++) {
        const [a, b] = [path[n - 1]!, path[n]!];
        if (a.g < 2 || b.g < 2) continue;
        const dot = a.tangents![1][0] * b.tangents![0][0] + a.tangents![1][1] * b.tangents![0][1];
        expect(dot).toBeGreaterThan(0.9995);
      }
    });
    it(`row ${name} stays clear of the wall until it is on its path`, () => {
      // on the half circles the cutter's centre is never further out (inside) or in (outside) than the path
      const path = steps(words([row]));
      const radius = plan!["Path radius"] / unit;
      for (const s of path.filter((m) => m.g >= 2)) {
        for (let k = 0; k <= 20; k++) {
          const a = Math.atan2(s.from[1] - s.centre![1], s.from[0] - s.centre![0]) + (s.angle! * k) / 20;
          const r = Math.hypot(s.centre![0] + s.radius! * Math.cos(a), s.centre![1] + s.radius! * Math.sin(a));
          if (external) expect(r).toBeGreaterThan(radius - 0.002);
          else expect(r).toBeLessThan(radius + 0.002);
        }
      }
    });
  }
  it("shifts every Z by the distance from tip to profile between the two tool zeros, and nothing else", () => {
    for (const name of [60, 440, 650]) {
      const row = byName(name);
      const tip = toolOf(String(planned([row])[0]!.Tool))["Tip to profile"] / (row.Units === "in" ? 25.4 : 1);
      const [a, b] = [steps(words([row], "tip")), steps(words([row], "profile"))];
      expect(a.length).toBe(b.length);
      a.forEach((s, n) => {
        expect(b[n]!.to.slice(0, 2)).toEqual(s.to.slice(0, 2));
        if (s.g >= 2) expect(b[n]!.to[2] - s.to[2]).toBeCloseTo(tip, row.Units === "in" ? 3 : 2);
      });
    }
  });
});

/**
 * Which way the path runs, from the sense of the spindle. M3 turns clockwise as seen from above (ISO 841), so the edge
 * on the right of the travel moves backwards, with the material that comes towards the cutter: climb milling has the wall
 * on the right. In a hole the wall is outside the circle: counter-clockwise. On a boss it is inside: clockwise. A
 * right-hand helix rises counter-clockwise.
 */
function wanted(inside: boolean, right: boolean, climb: boolean) {
  // velocity of the edge on the right of a cutter that travels along +Y, spindle −Z: ω × r with r = +X
  const edge = -1;
  const materialComes = -1;
  const wallOnTheRight = (edge === materialComes) === climb;
  const counter = inside === wallOnTheRight;
  return { g: counter ? 3 : 2, up: counter === right, side: wallOnTheRight ? "G41" : "G42" };
}

describe("direction of threads (independent)", () => {
  for (const inside of [true, false])
    for (const right of [true, false])
      for (const climb of [true, false]) {
        const { g, up, side } = wanted(inside, right, climb);
        const title = `${inside ? "internal" : "external"}, ${right ? "right" : "left"} hand, ${climb ? "climb" : "conventional"}: G${g}, ${up ? "bottom up" : "top down"}, ${side}`;
        it(title, () => {
          const base = inside ? byName(60) : byName(650);
          const row = { ...base, Hand: right ? "right" : "left", Way: climb ? "climb" : "conventional" };
          const listing = words([row]);
          const path = steps(listing).filter((s) => s.g >= 2 && Math.hypot(...s.centre!) < 1e-9);
          expect(path.every((s) => s.g === g && s.to[2] > s.from[2] === up)).toBe(true);
          expect(listing.filter((b) => b === "G41" || b === "G42").every((b) => b === side)).toBe(true);
          // and a program like it is as planned
          expect(alarms(check(listing.join("\n"), [row]))).toEqual([]);
        });
      }
  it("is G3, bottom up, G41 for the everyday thread", () => {
    expect(wanted(true, true, true)).toEqual({ g: 3, up: true, side: "G41" });
  });
});

describe("mirrors of hand and way (identity)", () => {
  for (const name of [60, 440, 650]) {
    it(`the other hand of row ${name} is its mirror image: same X and Z, Y and turns reversed`, () => {
      // the number of passes is told: bending may want another one for the other way
      const row = { ...byName(name), Passes: 2, "Spring passes": 1 };
      const own = words([{ ...row, Hand: "right", Way: "climb" }]);
      // mirrored in the plane Y = 0, the hand and the way both change
      const other = words([{ ...row, Hand: "left", Way: "conventional" }]);
      const [a, b] = [steps(own), steps(other)];
      expect(a.length).toBe(b.length);
      a.forEach((s, n) => {
        const t = b[n]!;
        expect(t.to[0]).toBeCloseTo(s.to[0], 9);
        expect(t.to[1]).toBeCloseTo(-s.to[1], 9);
        if (s.g >= 2) {
          expect(t.g).toBe(5 - s.g);
          expect(t.to[2]).toBeCloseTo(s.to[2], 9);
        }
      });
    });
  }
});

describe("words and the comparison (identity)", () => {
  const able = demoRows.filter((row) => words([row]).some((block) => /^G[0-3] /.test(block)));
  it("give words for the demo rows that a plan determines", () => {
    expect(able.length).toBeGreaterThanOrEqual(60);
  });
  for (const row of able)
    it(`the words of row ${row.Row} (${row.Operation}) are as planned`, () => {
      for (const zero of ["tip", "profile"] as const) {
        const found = check(words([row], zero).join("\r\n"), [row], zero);
        expect(alarms(found), found.map((f) => f.text).join("\n")).toEqual([]);
      }
    });
  it("all rows in one listing are as planned", () => {
    const found = check(words(able).join("\n"), able);
    expect(alarms(found), found.map((f) => `${f.row} ${f.text}`).join("\n")).toEqual([]);
    for (const row of able) expect(found.some((f) => f.row === String(row.Row) && f.code === "")).toBe(true);
  });
  it("the words for the profile's middle are not as planned at the tip, and the sentence says why", () => {
    const row = byName(60);
    const found = check(words([row], "profile").join("\n"), [row], "tip");
    expect(alarms(found)).toEqual(["60 depth check"]);
    expect(found.find((f) => f.code === "depth")!.text).toMatch(/from tip to profile/);
  });
});

const KINDS = [20, 40, 60, 100, 110, 130, 320, 490, 550, 560, 580, 650];
const LENGTHS = [
  "Start diameter",
  "Finish diameter",
  "Depth",
  "Length",
  "Radial depth",
  "Axial depth",
  "Hole depth",
  "Size tolerance",
];
/** The same row in the other system; sizes of threads and tools stay as they are. */
function twin(row: RowCells): RowCells {
  const k = row.Units === "in" ? 25.4 : 1 / 25.4;
  const own = (cell: RowCells[string]) => {
    if (typeof cell === "number") return cell * k;
    const f = /^(\d+)\/(\d+)$/.exec(String(cell));
    return f ? (Number(f[1]) / Number(f[2])) * k : (cell ?? null);
  };
  return {
    ...Object.fromEntries(Object.entries(row).map(([key, cell]) => [key, LENGTHS.includes(key) ? own(cell) : cell])),
    Units: row.Units === "in" ? "mm" : "in",
  };
}

describe("inch and metric words (identity)", () => {
  for (const name of KINDS)
    it(`row ${name} makes the same path in both`, () => {
      const row = byName(name);
      const [a, b] = [steps(words([row])), steps(words([twin(row)]))];
      const [ka, kb] = row.Units === "in" ? [25.4, 1] : [1, 25.4];
      expect(b.length).toBe(a.length);
      a.forEach((s, n) => {
        // depths are told with three places (mm) and four (in): passes but the last may differ by their rounding
        for (let i = 0; i < 3; i++)
          if (!Number.isNaN(s.to[i]!)) expect(Math.abs(s.to[i]! * ka - b[n]!.to[i]! * kb)).toBeLessThan(0.009);
      });
      const unitWord = (rows: RowCells[]) => words(rows).find((block) => /G2[01]/.test(block))!;
      expect(unitWord([row])).toContain(row.Units === "in" ? "G20" : "G21");
      expect(unitWord([twin(row)])).toContain(row.Units === "in" ? "G21" : "G20");
      // each is as planned in the other's table
      expect(alarms(check(words([row]).join("\n"), [twin(row)]))).toEqual([]);
    });
});

describe("length and time of the words (independent)", () => {
  /** Seconds of a listing as the plan counts them: straight moves and arcs from rest to rest, a trapezoid of speed each. */
  const restToRest = (l: number, v: number, a: number) => (l * a >= v * v ? l / v + v / a : 2 * Math.sqrt(l / a));
  const machine = { "Centre V4": [36, 5], "Centre V3": [24, 3], "Small centre S5": [50, 10] } as Record<
    string,
    [number, number]
  >;
  for (const name of [50, 60, 80, 210, 400, 560, 580, 640, 650, 660])
    it(`row ${name} takes the time of its plan`, () => {
      const row: RowCells = { ...byName(name), Quantity: 1 };
      const [plan] = planned([row], withoutRamp());
      const unit = row.Units === "in" ? 25.4 : 1;
      const [rapid, acceleration] = machine[String(row.Machine)]!;
      const a = acceleration * 1000;
      const feed = plan!["Table feed"] / 60;
      // from the last place, and down to the clearance height: neither is in the words
      let seconds = restToRest(25, (rapid * 1000) / 60, a) + restToRest(20, (rapid * 1000) / 60, a);
      const path = steps(words([row]));
      // one block a turn is one move for the plan
      let open: { length: number; radius: number; rise: number; angle: number } | undefined;
      const close = () => {
        if (!open) return;
        const rise = (open.rise / open.angle) * 1;
        const limit = Math.sqrt((a * (open.radius ** 2 + rise ** 2)) / open.radius);
        seconds += restToRest(open.length, Math.min(feed, limit), a);
        open = undefined;
      };
      for (const s of path) {
        const length = s.length * unit;
        if (s.g < 2) {
          close();
          if (s.g === 0) {
            if (Number.isNaN(s.from[2]) || s.from[0] !== s.to[0]) continue;
            seconds += restToRest(length, (rapid * 1000) / 60, a);
          } else seconds += restToRest(length, feed, a);
          continue;
        }
        const radius = s.radius! * unit;
        const rise = Math.abs(s.to[2] - s.from[2]) * unit;
        if (open && Math.abs(open.radius - radius) < 0.01) {
          open.length += length;
          open.rise += rise;
          open.angle += Math.abs(s.angle!);
        } else {
          close();
          open = { length, radius, rise, angle: Math.abs(s.angle!) };
        }
      }
      close();
      // the half circles of the words may rise a quarter pitch, and a boss keeps further off: a few per cent
      expect(seconds / plan!["Time each"]).toBeGreaterThan(0.96);
      expect(seconds / plan!["Time each"]).toBeLessThan(1.04);
    });
  it("has as many turns as the depth has pitches, and one more", () => {
    for (const [name, pitch] of [
      [60, 1.25],
      [210, 1],
      [640, 1.75],
    ] as const) {
      const row: RowCells = { ...byName(name), Passes: 1, "Spring passes": 0 };
      const helix = steps(words([row])).filter((s) => s.g >= 2 && Math.hypot(...s.centre!) < 1e-9);
      const turns = helix.reduce((sum, s) => sum + Math.abs(s.angle!), 0) / (2 * Math.PI);
      expect(turns).toBeCloseTo((row.Depth as number) / pitch + 1, 2);
      const length = helix.reduce((sum, s) => sum + s.length, 0);
      const radius = planned([row])[0]!["Path radius"];
      expect(length / (turns * Math.hypot(2 * Math.PI * radius, pitch))).toBeCloseTo(1, 3);
    }
  });
});

describe("the listing (identity)", () => {
  it("begins with the caution, in round brackets, and holds no brackets inside them", () => {
    const listing = words([byName(60)]);
    expect(listing[0]).toMatch(/^\(.*NOT A PROGRAM TO RUN\)$/);
    for (const block of listing) {
      expect(block).toMatch(/^[\x20-\x7e]+$/);
      if (block.includes("(")) expect(block).toMatch(/^\([^()%]*\)$/);
      else expect(block).toMatch(/^(?:[A-Z]-?\d+(?:\.\d+)?)(?: [A-Z]-?\d+(?:\.\d+)?)*$/);
    }
  });
  it("keeps what a person wrote in a row from becoming words", () => {
    const nasty = words([{ ...byName(50), Row: "1) M30 (", Feature: "⌀6.6 (thru)\nG0 Z-99 %", Thread: null }]);
    expect(nasty.filter((b) => /M30|Z-99/.test(b)).every((b) => /^\([^()]*\)$/.test(b))).toBe(true);
    expect(nasty.some((b) => b.includes("\n"))).toBe(false);
  });
  it("says why a row has no words", () => {
    const listing = words([byName(190), byName(120)]);
    expect(listing.filter((b) => b.startsWith("(NO WORDS:"))).toHaveLength(2);
    expect(listing.join("\n")).toMatch(/DEPTH IS BLANK/);
    expect(listing.some((b) => /^G/.test(b))).toBe(false);
  });
  it("makes none of a row that goes around or along more than 10000 times, and says so", () => {
    const steel = { Units: "mm", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3" };
    const slot = { ...steel, Row: 1, Operation: "slot", Tool: "EM-12-4", Depth: 4, Length: 60 };
    // 4 mm in levels of 0.0004: 10000
    const most = words([{ ...slot, "Axial depth": 0.0004 }]);
    expect(most.filter((b) => b.endsWith("OF 10000)"))).toHaveLength(10_000);
    const thread = { ...steel, Row: 2, Operation: "thread mill", Tool: "TM-M6-S", Thread: "M6", Depth: 1e9 };
    const bore = { ...steel, Row: 3, Operation: "bore", Tool: "EM-12-3", "Start diameter": 39, "Finish diameter": 40 };
    for (const row of [{ ...slot, "Axial depth": 0.00039 }, thread, { ...bore, Depth: 1e9 }]) {
      const none = words([row]);
      expect(none.filter((b) => /^\(NO WORDS: MORE THAN 10000 TURNS OR CUTS/.test(b))).toHaveLength(1);
      expect(none.some((b) => /^G/.test(b))).toBe(false);
    }
  });
  it("gives a row without an operation none", () => {
    const listing = words([{ ...byName(50), Row: 7, Feature: "plate", Operation: null, Thread: null }]);
    expect(listing).toContain("(ROW 7 PLATE)");
    expect(listing.join("\n")).toMatch(/NO WORDS: OPERATION IS BLANK/);
  });
  it("says that the plan says stop", () => {
    expect(words([byName(570)]).some((b) => b.startsWith("(THE PLAN SAYS STOP:"))).toBe(true);
  });
});
