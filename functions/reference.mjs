// REFERENCE.md from the doc comments of the worksheet functions.
import fs from "node:fs";

/** Doc comment of each exported function: description, parameters, returns, examples. */
export function declarations(source) {
  const found = [];
  const pattern = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*export function ([A-Z][A-Z0-9.]*)\(/g;
  for (const [, comment, name] of source.matchAll(pattern)) {
    if (!comment.includes("@customfunction")) continue;
    const lines = comment.split("\n").map((line) => line.replace(/^\s*\*? ?/, "").trimEnd());
    const tags = lines.join("\n").split(/^@/m);
    const examples = [];
    const remarks = [];
    for (const tag of tags.slice(1)) {
      if (tag.startsWith("example"))
        examples.push(
          ...tag
            .slice(7)
            .split("\n")
            .filter((l) => l.trim() !== "")
            .map((l) => l.trim()),
        );
      if (tag.startsWith("remarks")) remarks.push(tag.slice(7).trim().replace(/\n/g, " "));
    }
    const returns =
      tags
        .find((t) => t.startsWith("returns"))
        ?.slice(7)
        .trim()
        .replace(/\n/g, " ") ?? "";
    found.push({ name, examples, remarks, returns });
  }
  return found;
}

export function referencePage(files, described) {
  const details = new Map(files.flatMap((f) => declarations(fs.readFileSync(f, "utf8"))).map((d) => [d.name, d]));
  const out = ["# Worksheet functions", "", "Generated from the doc comments; do not edit.", ""];
  for (const f of described.functions) {
    const d = details.get(f.id);
    const signature = f.parameters.map((p) => (p.optional ? `[${p.name}]` : p.name)).join(", ");
    out.push(`## CUT.${f.id}`, "", `\`CUT.${f.id}(${signature})\``, "", f.description, "");
    for (const p of f.parameters) out.push(`- \`${p.name}\`${p.optional ? " (optional)" : ""}: ${p.description}`);
    out.push("", `Gives: ${d?.returns ?? ""}`, "");
    for (const r of d?.remarks ?? []) out.push(r, "");
    if (d?.examples.length) out.push("```", ...d.examples, "```", "");
  }
  return `${out.join("\n").trimEnd()}\n`;
}
