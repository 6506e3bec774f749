// How types and lint are checked: said here once, for `quick`, `check` and the house test.
import { fileURLToPath } from "node:url";

const npx = (...words) => ["npx", "--no-install", ...words];

/**
 * The native compiler, by its path: the older one beside it, which the metadata generator and two house tests read
 * sources with, brings a command of the same name.
 */
const compiler = fileURLToPath(new URL("bin/tsc", import.meta.resolve("typescript-native/package.json")));
const types = (...words) => [process.execPath, compiler, "-p", ".", ...words];
const lint = (...words) => npx("biome", "check", "--config-path=.biome.json", ...words, ".");

export { lint, npx, types };
