import exceljs from "exceljs";
import { describe, expect, it } from "vitest";
import { openPackage } from "../../../taskpane/desk/package/open.ts";
import { savePackage } from "../../../taskpane/desk/package/save.ts";
import { handmade } from "./handmade.ts";
import { least, leastParts, officeRoundTrip, partText, unzipped, zipped } from "./packages.ts";

const VT = "http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes";
const CUSTOM = "http://schemas.openxmlformats.org/officeDocument/2006/custom-properties";
const LONG = `{"ø fertig":"in:finishDiameter","送り":"out:tableFeed"} & <x> ${"abc 😀 ".repeat(150)}`;

const setting = (name: string, value: string | null) => ({ kind: "setting", name, value }) as const;
const save = (bytes: Uint8Array, ...edits: ReturnType<typeof setting>[]) => savePackage(openPackage(bytes).kept, edits);
const settingsOf = (bytes: Uint8Array) => openPackage(bytes).book.settings;

describe("what is kept in a workbook beside its cells (published, ECMA-376 part 1, 22.3)", () => {
  const plain = least({});
  it("comes back as it was, in pieces that no program cuts", () => {
    expect(settingsOf(plain)).toEqual({});
    const saved = save(plain, setting("headings", LONG), setting("other", ""));
    expect(settingsOf(saved)).toEqual({ headings: LONG, other: "" });
    const text = partText(saved, "docProps/custom.xml");
    for (const [, own] of text.matchAll(/<vt:lpwstr[^>]*>([^<]*)</g)) expect([...own!].length).toBeLessThan(300);
    const pids = [...text.matchAll(/pid="(\d+)"/g)].map(([, pid]) => Number(pid));
    expect(new Set(pids).size).toBe(pids.length);
    expect(Math.min(...pids)).toBe(2);
    expect(partText(saved, "[Content_Types].xml")).toContain('PartName="/docProps/custom.xml"');
    expect(partText(saved, "_rels/.rels")).toContain("relationships/custom-properties");
  });
  it("is put in another's place, and taken out", () => {
    const saved = save(plain, setting("headings", LONG), setting("other", "x"));
    expect(settingsOf(save(saved, setting("headings", "short")))).toEqual({ headings: "short", other: "x" });
    expect(settingsOf(save(saved, setting("headings", null)))).toEqual({ other: "x" });
    // The last of several in one save counts.
    expect(settingsOf(save(saved, setting("other", "y"), setting("other", "z")))).toMatchObject({ other: "z" });
  });
  it("leaves the shop's own properties as they are", () => {
    const own = `<property fmtid="{D5CDD505-2E9C-101B-9397-08002B2CF9AE}" pid="7" name="Order"><vt:lpwstr>A &amp; B</vt:lpwstr></property>`;
    const parts = leastParts({});
    const types = String(parts["[Content_Types].xml"]);
    const bytes = zipped({
      ...parts,
      "[Content_Types].xml": types.replace(
        "</Types>",
        '<Override PartName="/docProps/custom.xml" ContentType="application/vnd.openxmlformats-officedocument.custom-properties+xml"/></Types>',
      ),
      "_rels/.rels": String(parts["_rels/.rels"]).replace(
        "</Relationships>",
        '<Relationship Id="rId9" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/custom-properties" Target="docProps/custom.xml"/></Relationships>',
      ),
      "docProps/custom.xml": `<Properties xmlns="${CUSTOM}" xmlns:vt="${VT}">${own}</Properties>`,
    });
    const saved = save(bytes, setting("headings", "x"));
    expect(partText(saved, "docProps/custom.xml")).toContain(own);
    expect(partText(saved, "docProps/custom.xml")).toContain('pid="8" name="tablefeed.headings"');
    expect(settingsOf(saved)).toEqual({ headings: "x" });
    expect(partText(save(saved, setting("headings", null)), "docProps/custom.xml")).toBe(
      `<Properties xmlns="${CUSTOM}" xmlns:vt="${VT}">${own}</Properties>`,
    );
  });
  it("spoils only its own name where a piece of it is gone", () => {
    const saved = save(plain, setting("headings", LONG), setting("other", "x"));
    const parts = Object.fromEntries(Object.entries(unzipped(saved)).map(([name]) => [name, partText(saved, name)]));
    parts["docProps/custom.xml"] = parts["docProps/custom.xml"]!.replace(
      /<property[^>]*name="tablefeed\.headings\.2".*?<\/property>/,
      "",
    );
    expect(settingsOf(zipped(parts))).toEqual({ other: "x" });
  });
  it("changes no other part", () => {
    const before = unzipped(handmade());
    const after = unzipped(save(handmade(), setting("headings", "x")));
    const same = new Set(["[Content_Types].xml", "_rels/.rels", "docProps/custom.xml"]);
    for (const [name, text] of Object.entries(before)) if (!same.has(name)) expect(after[name], name).toBe(text);
  });
});

describe("other programs (independent)", () => {
  it("a general library finds a workbook that is whole", async () => {
    const book = new exceljs.Workbook();
    await book.xlsx.load(save(least({}), setting("headings", LONG)).slice().buffer as ArrayBuffer);
    expect(book.worksheets.length).toBeGreaterThan(0);
  });
  it("LibreOffice saves it again with what was kept", () => {
    const again = officeRoundTrip(save(least({}), setting("headings", LONG)));
    if (again === undefined) return;
    expect(settingsOf(again)).toEqual({ headings: LONG });
  });
});
