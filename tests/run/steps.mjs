// How types and lint are checked: said here once, for `quick`, `check` and the house test.
const npx = (...words) => ["npx", "--no-install", ...words];

/**
 * The native compiler, by its path: the older one beside it, which the metadata generator and two house tests read
 * sources with, brings a command of the same name.
 */
const types = (...words) => [process.execPath, "node_modules/typescript-native/bin/tsc", "-p", ".", ...words];
const lint = (...words) => npx("biome", "check", "--config-path=.biome.json", ...words, ".");

export { lint, npx, types };
