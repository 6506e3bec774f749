// Lets LibreOffice write two workbooks: files/libreoffice.xlsx from files/openpyxl.xlsx (chart, picture, notes, rules), and
// files/pivot.xlsx from files/pivot.fods (a pivot table). Run: node make-libreoffice.mjs
import { execFileSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";

const files = path.join(import.meta.dirname, "files");
const out = fs.mkdtempSync(path.join(os.tmpdir(), "package-"));
for (const [from, to] of [
  ["openpyxl.xlsx", "libreoffice.xlsx"],
  ["pivot.fods", "pivot.xlsx"],
]) {
  const profile = `-env:UserInstallation=file://${out}/profile`;
  const settings = ["--headless", profile, "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", out];
  execFileSync("soffice", [...settings, path.join(files, from)]);
  fs.copyFileSync(path.join(out, from.replace(/\.\w+$/, ".xlsx")), path.join(files, to));
}
fs.rmSync(out, { recursive: true });
