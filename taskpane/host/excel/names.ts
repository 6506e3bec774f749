/** Names of the sheets that were read, by the ids that events speak of. */
export interface SheetNames {
  keep(sheet: { readonly id: string; readonly name: string }): void;
  /** Undefined for a sheet that was never read. */
  of(id: string | undefined): string | undefined;
}

export function createSheetNames(): SheetNames {
  const names = new Map<string, string>();
  return {
    keep: ({ id, name }) => void names.set(id, name),
    of: (id) => (id === undefined ? undefined : names.get(id)),
  };
}
