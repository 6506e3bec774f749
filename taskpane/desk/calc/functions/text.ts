/** Text: parts of it, search in it, numbers as text and text as numbers. */
import { format } from "numfmt";
import type { Value } from "../../model/types.ts";
import { Failure, isError, numberInText, type Operand, toFlag, toNumber, toText, VALUE } from "../values.ts";
import type { Definition, Definitions, World } from "../world.ts";
import { each, eachValue, flag, pattern, whole, words } from "./arguments.ts";
import { dateInText } from "./dates.ts";

const text = (value: Value | undefined): string => toText(value ?? null);
const count = (value: Value | undefined, otherwise: number): number => {
  if (value === undefined) return otherwise;
  const n = Math.trunc(toNumber(value));
  if (n < 0) throw new Failure(VALUE);
  return n;
};
const joined = (args: readonly Operand[], world: World): string => {
  let made = "";
  eachValue(args, world, (value) => {
    if (isError(value)) throw new Failure(value);
    made += toText(value);
  });
  return made;
};

const place = (run: (find: string, within: string, from: number) => number): Definition =>
  each(2, 3, ([find, within, from]) => {
    const start = count(from, 1);
    const hay = text(within);
    if (start < 1 || start > hay.length + 1) return VALUE;
    const at = run(text(find), hay, start - 1);
    return at < 0 ? VALUE : at + 1;
  });

const WINDOWS = new TextDecoder("windows-1252");

const asText = (value: Value, pattern_: string): Value => {
  if (isError(value)) return value;
  try {
    return format(pattern_, value, { throws: true });
  } catch {
    return VALUE;
  }
};

export const text_: Definitions = {
  LEFT: each(1, 2, ([from, n]) => text(from).slice(0, count(n, 1))),
  RIGHT: each(1, 2, ([from, n]) => {
    const all = text(from);
    return all.slice(Math.max(0, all.length - count(n, 1)));
  }),
  MID: each(3, 3, ([from, start, n]) => {
    const at = count(start, 1);
    return at < 1 ? VALUE : text(from).slice(at - 1, at - 1 + count(n, 0));
  }),
  LEN: each(1, 1, ([from]) => text(from).length),
  FIND: place((find, within, from) => within.indexOf(find, from)),
  SEARCH: place((find, within, from) => {
    const found = pattern(find, false).exec(within.slice(from));
    return found === null ? -1 : found.index + from;
  }),
  SUBSTITUTE: each(3, 4, ([from, old, next, which]) => {
    const [all, find, put] = [text(from), text(old), text(next)];
    if (find === "") return all;
    if (which === undefined) return all.replaceAll(find, () => put);
    const n = count(which, 1);
    if (n < 1) return VALUE;
    let at = -find.length;
    for (let i = 0; i < n; i++) {
      at = all.indexOf(find, at + find.length);
      if (at < 0) return all;
    }
    return all.slice(0, at) + put + all.slice(at + find.length);
  }),
  REPLACE: each(4, 4, ([from, start, n, next]) => {
    const at = count(start, 1);
    if (at < 1) return VALUE;
    const all = text(from);
    return all.slice(0, at - 1) + text(next) + all.slice(at - 1 + count(n, 0));
  }),
  UPPER: each(1, 1, ([from]) => text(from).toUpperCase()),
  LOWER: each(1, 1, ([from]) => text(from).toLowerCase()),
  PROPER: each(1, 1, ([from]) =>
    text(from)
      .toLowerCase()
      .replace(/(^|[^\p{L}])(\p{L})/gu, (_, before: string, letter: string) => before + letter.toUpperCase()),
  ),
  TRIM: each(1, 1, ([from]) => text(from).replace(/ +/g, " ").replace(/^ | $/g, "")),
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what it takes out
  CLEAN: each(1, 1, ([from]) => text(from).replace(/[\x00-\x1f]/g, "")),
  REPT: each(2, 2, ([from, n]) => {
    const times = count(n, 0);
    return text(from).length * times > 32767 ? VALUE : text(from).repeat(times);
  }),
  EXACT: each(2, 2, ([a, b]) => text(a) === text(b)),
  CHAR: each(1, 1, ([code]) => {
    const n = Math.trunc(toNumber(code!));
    return n < 1 || n > 255 ? VALUE : WINDOWS.decode(Uint8Array.of(n));
  }),
  CODE: each(1, 1, ([from]) => {
    const first = text(from)[0];
    if (first === undefined) return VALUE;
    for (let n = 1; n < 256; n++) if (WINDOWS.decode(Uint8Array.of(n)) === first) return n;
    return 63;
  }),
  UNICHAR: each(1, 1, ([code]) => {
    const n = Math.trunc(toNumber(code!));
    return n < 1 || n > 0x10ffff || (n >= 0xd800 && n <= 0xdfff) ? VALUE : String.fromCodePoint(n);
  }),
  UNICODE: each(1, 1, ([from]) => text(from).codePointAt(0) ?? VALUE),
  CONCATENATE: each(1, 255, (values) => values.map(text).join("")),
  CONCAT: whole(1, 255, (args, _, world) => joined(args, world)),
  TEXTJOIN: whole(3, 255, ([between, skip, ...args], spot, world) => {
    const leave = flag(skip, spot, world, true);
    const parts: string[] = [];
    eachValue(args, world, (value) => {
      if (isError(value)) throw new Failure(value);
      const own = toText(value);
      if (own !== "" || !leave) parts.push(own);
    });
    return parts.join(words(between, spot, world));
  }),
  VALUE: each(1, 1, ([from]) => {
    if (typeof from === "number") return from;
    if (typeof from === "boolean") return VALUE;
    const own = text(from);
    if (own.trim() === "") return from === null ? 0 : VALUE;
    return numberInText(own) ?? dateInText(own) ?? VALUE;
  }),
  NUMBERVALUE: each(1, 3, ([from, decimal, group]) => {
    const point = text(decimal ?? ".")[0] ?? ".";
    const thousands = text(group ?? ",")[0] ?? ",";
    const plain = text(from).replaceAll(" ", "").replaceAll(thousands, "").replace(point, ".");
    return plain === "" ? 0 : (numberInText(plain) ?? VALUE);
  }),
  TEXT: whole(2, 2, ([value, pattern_], spot, world) => {
    const read = (operand: Operand) => {
      const found = world.read(operand, spot, false);
      return Array.isArray(found) ? (found[0]![0] as Value) : (found as Value);
    };
    const shown = read(value);
    return asText(shown ?? 0, toText(read(pattern_)));
  }),
  FIXED: each(1, 3, ([value, decimals, plain]) => {
    const n = decimals === undefined ? 2 : Math.trunc(toNumber(decimals));
    const scale = 10 ** n;
    const number = n < 0 ? Math.round(toNumber(value!) * scale) / scale : toNumber(value!);
    const bare = plain !== undefined && toFlag(plain);
    return asText(number, `${bare ? "0" : "#,##0"}${n > 0 ? `.${"0".repeat(n)}` : ""}`);
  }),
};

export { text_ as text };
