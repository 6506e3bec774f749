// The licences of everything that is bundled, from what esbuild says went in and the packages' own licence files.
import fs from "node:fs";
import path from "node:path";

/** Names of the packages whose code is in the outputs of these metafiles. */
export function bundledPackages(metafiles) {
  const names = new Set();
  for (const { outputs } of metafiles)
    for (const { inputs } of Object.values(outputs))
      for (const [file, { bytesInOutput }] of Object.entries(inputs)) {
        const inside = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1];
        if (inside !== undefined && bytesInOutput > 0) names.add(inside);
      }
  return [...names].sort();
}

/** Text of NOTICES.txt: each licence once, under the packages that it covers. */
export function notices(root, folders) {
  const texts = new Map();
  for (const folder of folders) {
    const at = path.join(root, folder);
    const { name, version, license, author } = JSON.parse(fs.readFileSync(path.join(at, "package.json"), "utf8"));
    const file = fs.readdirSync(at).find((f) => /^(?:licen[cs]e|copying)(?:[.-]|$)/i.test(f));
    const holder = typeof author === "string" ? author : author?.name;
    if (file === undefined && typeof license !== "string")
      throw new Error(`${name} is bundled and says nothing of its licence`);
    const text =
      file === undefined
        ? `Licence: ${license}${holder ? `, ${holder}` : ""} (the package brings no licence text)`
        : fs.readFileSync(path.join(at, file), "utf8").replace(/\r\n/g, "\n").trim();
    texts.set(text, [...(texts.get(text) ?? []), `${name} ${version}`]);
  }
  const rule = "-".repeat(80);
  const own = fs.readFileSync(path.join(root, "LICENSE"), "utf8").trim();
  const parts = [...texts].map(([text, packages]) => `${[...new Set(packages)].join("\n")}\n\n${text}`);
  return `${[`Tablefeed\n\n${own}`, ...parts].join(`\n\n${rule}\n`)}\n`;
}
