import { describe, expect, it } from "vitest";
import { nearestDrill } from "../../src/drill/sizes.ts";
import { TradeError } from "../../src/errors.ts";
import { gaugeChange, taperPipe } from "../../src/thread/taper-pipe.ts";
import { refusal } from "../refusal.ts";

describe("NPT basic dimensions (published: ASME B1.20.1-1983 Table 2, from memory)", () => {
  it.each([
    ["1/16-27", 0.27118, 0.28118, 0.2611],
    ["1/8-27", 0.36351, 0.3736, 0.2639],
    ["1/4-18", 0.47739, 0.49163, 0.4018],
    ["3/8-18", 0.61201, 0.62701, 0.4078],
    ["1/2-14", 0.75843, 0.77843, 0.5337],
    ["3/4-14", 0.96768, 0.98887, 0.5457],
    ["1-11.5", 1.21363, 1.23863, 0.6828],
    ["1-1/4-11.5", 1.55713, 1.58338, 0.7068],
    ["1-1/2-11.5", 1.79609, 1.82234, 0.7235],
    ["2-11.5", 2.26902, 2.29627, 0.7565],
    ["2-1/2-8", 2.71953, 2.76216, 1.1375],
    ["3-8", 3.34062, 3.3885, 1.2],
    ["4-8", 4.33438, 4.38712, 1.3],
    ["6-8", 6.44609, 6.50597, 1.5125],
  ])("%s", (name, E0, E1, L2) => {
    const t = taperPipe(`${name} NPT`);
    expect(Math.abs(t.smallEnd - E0)).toBeLessThan(6e-6);
    expect(Math.abs(t.mouth - E1)).toBeLessThan(1.2e-5);
    expect(Math.abs(t.effective - L2)).toBeLessThan(6e-5);
  });
  it.each([
    ["1/8-27", ["Q", "R", "11/32"]],
    ["1/4-18", ["7/16"]],
    ["3/8-18", ["9/16", "37/64"]],
    ["1/2-14", ["45/64", "23/32"]],
    ["3/4-14", ["29/32", "59/64"]],
    ["1-11.5", ["1-9/64", "1-5/32"]],
  ])(
    "%s: the customary drills lie between the minor diameters inside and at the mouth (within 1/64 in)",
    (name, drills) => {
      const t = taperPipe(`${name} NPT`);
      const middle = nearestDrill(((t.minorInside + t.minorMouth) / 2) * 25.4, ["fraction", "letter"]);
      expect(middle.diameter / 25.4).toBeGreaterThan(t.minorInside - 1 / 64);
      expect(middle.diameter / 25.4).toBeLessThan(t.minorMouth + 1 / 64);
      for (const drill of drills) {
        const d = ({ Q: 0.332, R: 0.339, "11/32": 11 / 32 } as Record<string, number>)[drill] ?? evaluate(drill);
        expect(d).toBeGreaterThan(t.minorInside - 1 / 128);
        expect(d).toBeLessThan(t.minorMouth + 1 / 128);
      }
    },
  );
});

const evaluate = (text: string) =>
  text.split("-").reduce((sum, part) => {
    const [top, bottom = "1"] = part.split("/");
    return sum + Number(top) / Number(bottom);
  }, 0);

describe("NPT (identity)", () => {
  it("tapers by one in sixteen between the planes and moves a sixteenth of the pitch per turn", () => {
    const t = taperPipe("1/2-14 NPTF");
    expect((t.mouth - t.smallEnd) / t.handTight).toBeCloseTo(1 / 16, 12);
    expect(t.minorMouth - t.minorInside).toBeCloseTo(t.mouth - t.smallEnd, 12);
    expect(gaugeChange(t, 2)).toBeCloseTo(2 / 14 / 16, 12);
    expect(t.designation).toBe("1/2-14 NPTF");
    expect(taperPipe("1-11-1/2 NPT").tpi).toBe(11.5);
  });
  it.each([
    ["1/4 - 18 NPT", "1/4-18 NPT"],
    ['1/4"-18NPT', "1/4-18 NPT"],
    ['1/4 " -18 npt', "1/4-18 NPT"],
    ["1 / 4-18 NPTF", "1/4-18 NPTF"],
    ["1/4-18  NPTF", "1/4-18 NPTF"],
    ["1 1/4-11.5 NPT", "1-1/4-11.5 NPT"],
    ["1 - 1/4-11 1/2 NPT", "1-1/4-11.5 NPT"],
    ["1  1/4-11 - 1 / 2NPT", "1-1/4-11.5 NPT"],
    ["1-1/4-11-1/2 NPT", "1-1/4-11.5 NPT"],
    ["3-8 NPT", "3-8 NPT"],
  ])("reads %s as %s", (text, designation) => expect(taperPipe(text).designation).toBe(designation));
  it.each([
    ["10-8 NPT", /the sizes are/],
    ["11/16-27 NPT", /the sizes are/],
    ["1/100-27 NPT", /the sizes are/],
    ["10-1/4-18 NPT", /the sizes are/],
    ["1/4-180 NPT", /18 threads per inch/],
    ["1/4-18 1/4 NPT", /such as/],
    ["1/4-18.25 NPT", /such as/],
    ["A1/4-18 NPT", /such as/],
    ["1/4-18 NPTX", /such as/],
    ["1/4-18 NP", /such as/],
    ["1/4-20 NPT", /18 threads per inch/],
    ["5/8-14 NPT", /the sizes are 1\/16/],
    ["1/4 NPT", /such as/],
    ["", /such as/],
  ])("says of %s what exists", (text, allowed) => {
    expect(() => taperPipe(text)).toThrow(TradeError);
    expect(refusal(() => taperPipe(text))).toMatch(allowed);
  });
});
