import { describe, expect, it } from "vitest";
import { fromFile, toFile } from "../../../taskpane/desk/package/function-names.ts";
import { movedFormula, offsetFormula } from "../../../taskpane/desk/package/references.ts";

describe("names of functions in files (published, [MS-XLSX] 2.2.3)", () => {
  it.each([
    // As the file has it, as a person sees it.
    ["_xlfn.STDEV.S(B1:B10)", "STDEV.S(B1:B10)"],
    ["_xlfn._xlws.FILTER(A1:A3,B1:B3)", "FILTER(A1:A3,B1:B3)"],
    ['_xlfn.CONCAT(A1,"_xlfn.SUM(",B1)', 'CONCAT(A1,"_xlfn.SUM(",B1)'],
    ["NETWORKDAYS.INTL(A1,B1)", "NETWORKDAYS.INTL(A1,B1)"],
    ["_xlfn.LET(_xlpm.x,1,_xlpm.y,_xlpm.x+1,_xlpm.x*_xlpm.y)", "LET(x,1,y,x+1,x*y)"],
    ["_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.v,_xlpm.v*2))", "MAP(A1:A3,LAMBDA(v,v*2))"],
    ["SUM(_xlfn.ANCHORARRAY(B2))", "SUM(B2#)"],
    ["_xlfn.SINGLE(A1:A3)*2", "@A1:A3*2"],
    ['_xldudf_CUT_RPM(120,10,"mm")', 'CUT.RPM(120,10,"mm")'],
    ["IF(_xldudf_CUT_TAPDRILL(A1)>1,'_xlfn.a'!A1,0)", "IF(CUT.TAPDRILL(A1)>1,'_xlfn.a'!A1,0)"],
  ])("%s", (inFile, seen) => {
    expect(fromFile(inFile)).toBe(seen);
    expect(toFile(seen, true)).toBe(inFile);
  });

  it("are read without regard to case, as other programs write them", () => {
    expect(fromFile("_XLDUDF_cut_plan(A1)+_XLFN.Concat(A1)")).toBe("CUT.PLAN(A1)+Concat(A1)");
    expect(toFile("cut.plan(A1)+concat(A1)")).toBe("_xldudf_CUT_PLAN(A1)+_xlfn.CONCAT(A1)");
  });

  it("that are newer than the list keep the spelling of the file", () => {
    expect(toFile("BRANDNEW(A1)", false, new Map([["BRANDNEW", "_xlfn.BRANDNEW"]]))).toBe("_xlfn.BRANDNEW(A1)");
    expect(toFile("BRANDNEW(A1)")).toBe("BRANDNEW(A1)");
  });

  it("a sign for one value is needed in growing formulas only: elsewhere it is what a plain formula does", () => {
    expect(toFile("=@A1:A3*2")).toBe("A1:A3*2");
    expect(toFile("SUM(Plan[@Dia])")).toBe("SUM(Plan[@Dia])");
  });
});

describe("references (published, ECMA-376 part 1, 18.17.2)", () => {
  const rows = (kind: "insert" | "delete", row: number, count: number, sheet = "S") => ({ kind, sheet, row, count });
  it("move only where they mean that sheet, and never inside of texts, names and other files", () => {
    const text = "SUM(A2:A5)+'My Sheet'!B7+A$3+$A:B+3:9+Plan[Dia]+[1]S!A9+\"A9\"+LOG10(A9)+A1_B9+S!A9:B10+S:T!A9";
    expect(movedFormula(text, "S", [rows("insert", 2, 2)])).toBe(
      "SUM(A2:A7)+'My Sheet'!B7+A$5+$A:B+5:11+Plan[Dia]+[1]S!A9+\"A9\"+LOG10(A11)+A1_B9+S!A11:B12+S:T!A9",
    );
    expect(movedFormula(text, "s", [rows("delete", 6, 1, "my sheet")])).toBe(
      text.replace("'My Sheet'!B7", "'My Sheet'!#REF!"),
    );
    expect(movedFormula("A1048576+A5", "S", [rows("insert", 0, 1)])).toBe("#REF!+A6");
  });

  it("follow sheets that get other names, in quotes where needed", () => {
    const to = (name: string) => movedFormula("T!A1+t!B2+A1", "S", [{ kind: "rename", sheet: "T", to: name }]);
    expect(to("Lists")).toBe("Lists!A1+Lists!B2+A1");
    expect(to("A b")).toBe("'A b'!A1+'A b'!B2+A1");
    expect(to("it's")).toBe("'it''s'!A1+'it''s'!B2+A1");
    expect(to("R1C1")).toBe("'R1C1'!A1+'R1C1'!B2+A1");
  });

  it("shift by an offset, with what leaves the sheet as #REF!", () => {
    expect(offsetFormula("A1+$B$2+C$3*$D4:E5+F:F+7:7", 2, 1)).toBe("B3+$B$2+D$3*$D6:F7+G:G+9:9");
    expect(offsetFormula("A1+B2", -1, -1)).toBe("#REF!+A1");
    expect(offsetFormula("XFD1048576", 0, 1)).toBe("#REF!");
  });
});
