/** Names of sheets. Pure. */

/** A name that a sheet may have. */
export function sheetNameFault(name: string, taken: readonly string[]): string | undefined {
  if (name.trim() === "") return "A sheet needs a name.";
  if (name.length > 31) return `The name "${name}" has ${name.length} characters; a sheet's name has at most 31.`;
  if (/[[\]:*?/\\]/.test(name) || /^'|'$/.test(name))
    return `The name "${name}" cannot be used for a sheet: it must not have any of [ ] : * ? / \\ nor start or end with '.`;
  if (taken.some((other) => other.toLowerCase() === name.toLowerCase())) return `There is a sheet "${name}" already.`;
  return undefined;
}
