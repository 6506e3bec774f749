import fs from "node:fs";
import path from "node:path";

export const root = path.resolve(import.meta.dirname, "../..");

/** Every file below a folder of the repository with that ending, sorted. */
export function filesBelow(folder: string, ending: string): string[] {
  const start = path.join(root, folder);
  if (!fs.existsSync(start)) return [];
  return (fs.readdirSync(start, { recursive: true }) as string[])
    .filter((name) => name.endsWith(ending) && !name.includes("node_modules"))
    .map((name) => path.join(start, name))
    .sort();
}
