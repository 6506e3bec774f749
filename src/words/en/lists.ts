/** English: several of a kind in one sentence. */
type Parts = readonly (string | number)[];

export const all = (parts: Parts): string => parts.join(", ");
/** "a, b or c" */
export const or = (parts: Parts): string => all(parts).replace(/, ([^,]*)$/, " or $1");
/** "a, b and c" */
export const and = (parts: Parts): string => all(parts).replace(/, ([^,]*)$/, " and $1");
