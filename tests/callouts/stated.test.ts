/** What a drawing says about its units, as drawings say it in six languages (from memory). */
import { describe, expect, it } from "vitest";
import { statedUnits } from "../../src/callouts/stated.ts";

describe("units that a line states", () => {
  it.each([
    "DIMENSIONS IN MM",
    "DIMENSION: MM",
    "ALL DIMENSIONS ARE IN MILLIMETERS",
    "DIM. IN MM",
    "DIM IN MM",
    "DIMS: MM",
    "DIMS. = MM",
    "DIMENSIONS ARE IN: MM",
    "UNIT MM",
    "UNITS=MM",
    "SIZES IN MM",
    "MEASUREMENTS ARE IN MM",
    "MASSE IN MM",
    "Maße: in mm",
    "EINHEIT: MM",
    "EINHEITEN MM",
    "COTES EN MM",
    "COTES SONT EN MM",
    "DIMENSIONES EN MM",
    "COTAS SON EN MM",
    "QUOTE IN MM",
    "DIMENSIONI SONO IN MM",
    "UNITA MM",
    "UNITÀ: MM",
    "寸法: mm",
    "単位 ミリ",
  ])("%s", (line) => expect(statedUnits(line)).toBe("mm"));
  it.each([
    "DIMENSIONS ARE IN INCHES",
    "UNITS: INCH",
    "UNITS: IN",
    "DIMENSIONS IN IN.",
    "DIMENSIONS ARE IN IN. UNLESS NOTED",
    "COTES EN POUCES",
    "COTAS EN PULGADAS",
    "QUOTE IN POLLICI",
    "MASSE IN ZOLL",
  ])("%s", (line) => expect(statedUnits(line)).toBe("in"));
  it.each([
    "UNITS 4",
    "UNITS 25MM",
    "UNITS: 25 MM",
    "UNITS = 5MM",
    "DIMENSIONS: IN  PARENTHESES FOR REFERENCE",
    "DIMENSIONS IN MMX",
    "DIMENSIONS IN PARENTHESES ARE FOR REFERENCE",
    "DIMENSIONS IN [BRACKETS] ARE MM",
    "UNITS: INSERT",
    "UNITS: INCHED",
    "PART IN MM",
    "DIMENSIONS",
    "DIMENSIONS NOT IN MM",
    "",
  ])("nothing: %s", (line) => expect(statedUnits(line)).toBeUndefined());
});
