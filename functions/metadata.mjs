// functions.json and REFERENCE.md, made from the doc comments of the worksheet functions.
import fs from "node:fs";
import path from "node:path";
import generator from "custom-functions-metadata";
import { referencePage } from "./reference.mjs";

const folder = import.meta.dirname;
export const GENERATED = path.join(folder, "generated");

/** Files that declare worksheet functions. */
const files = () =>
  fs
    .readdirSync(folder)
    .filter((f) => f.endsWith(".ts") && fs.readFileSync(path.join(folder, f), "utf8").includes("@customfunction"))
    .sort()
    .map((f) => path.join(folder, f));

/**
 * What Excel reads and what a person reads about the functions; throws when a declaration would be lost.
 * `help` is a page that Excel offers beside each function.
 */
export async function metadata(help) {
  const from = files();
  const made = await generator.generateCustomFunctionsMetadata(from, false);
  if (made.errors.length > 0) throw new Error(`worksheet function metadata: ${made.errors.join("; ")}`);
  const { functions, ...rest } = JSON.parse(made.metadataJson);
  const declared = from.flatMap((f) =>
    [...fs.readFileSync(f, "utf8").matchAll(/^export function ([A-Z][A-Z0-9.]*)\(/gm)].map((m) => m[1]),
  );
  const lost = declared.filter((name) => !functions.some((f) => f.id === name));
  if (lost.length > 0) throw new Error(`these worksheet functions have no metadata: ${lost.join(", ")}`);
  functions.sort((a, b) => (a.id < b.id ? -1 : 1));
  const described = {
    ...rest,
    // Without it Excel refuses a whole call for one #N/A in a range; the generator cannot write it.
    allowErrorForDataTypeAny: true,
    functions: help === undefined ? functions : functions.map((f) => ({ ...f, helpUrl: help })),
  };
  return {
    count: functions.length,
    json: `${JSON.stringify(described, null, 1)}\n`,
    reference: referencePage(from, described),
  };
}

/** Writes the two files that are committed. */
export async function writeGenerated() {
  const { json, reference } = await metadata();
  fs.mkdirSync(GENERATED, { recursive: true });
  fs.writeFileSync(path.join(GENERATED, "functions.json"), json);
  fs.writeFileSync(path.join(GENERATED, "REFERENCE.md"), reference);
}
