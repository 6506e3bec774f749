/** Every code that Excel may report has a sentence of ours: the codes are read from Office's own types. */
import fs from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { toHostError } from "../../taskpane/host/excel/errors.ts";
import { root } from "../house/files.ts";

const types = fs.readFileSync(path.join(root, "node_modules/@microsoft/office-js/dist/office.d.ts"), "utf8");

/** Codes of the enum or class ErrorCodes inside a namespace, as they are thrown. */
function codesIn(opening: RegExp, member: RegExp): string[] {
  const from = types.search(opening);
  const at = types.indexOf("ErrorCodes {", from);
  const body = types.slice(at, types.indexOf("}", at));
  return [...body.matchAll(member)].map((m) => m[1]!);
}
/** The namespace of Excel is the one whose list holds what only sheets have. */
const excel = [...types.matchAll(/enum ErrorCodes \{([^}]*)\}/g)]
  .map((m) => [...m[1]!.matchAll(/= "(\w+)"/g)].map((code) => code[1]!))
  .find((codes) => codes.includes("PivotTableRangeConflict"))!;
const extension = codesIn(/class ErrorCodes \{/, /static (?:readonly )?(\w+): string/g).map(
  (name) => name[0]!.toUpperCase() + name.slice(1),
);

/** What only a fault in the code brings about, or Excel itself cannot name: the person hears the code and what to try. */
const GENERAL = [
  "GeneralException",
  "InvalidArgument",
  "InvalidObjectPath",
  "PropertyNotLoaded",
  "ValueNotLoaded",
  "InvalidRequestContext",
  "RunMustReturnPromise",
  "CannotRegisterEvent",
];
const said = (code: string) => toHostError({ code });

describe("codes of Excel", () => {
  it("are read from the types", () => {
    expect(excel.length).toBeGreaterThanOrEqual(30);
    expect(extension).toContain("ConnectionFailure");
  });
  it.each([...new Set([...excel, ...extension])].filter((code) => !GENERAL.includes(code)))(
    "%s has a sentence of its own, that says what to do and no code",
    (code) => {
      const { message } = said(code);
      expect(message).not.toContain(code);
      expect(message).not.toMatch(/^Excel could not do it/);
      expect(message).toMatch(/[Tt]ry again|Split|Update|Rename|[Ss]elect|Look at|Unprotect|Move/);
    },
  );
  it.each(GENERAL)("%s is told with its code and what to try", (code) => {
    expect(said(code).message).toMatch(new RegExp(`^Excel could not do it \\(${code}\\)\\. Try again`));
  });
});
