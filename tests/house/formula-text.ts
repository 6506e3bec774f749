/** Runs worksheet formula text such as `=CUT.RPM(120, 10, "mm")`: literals, array constants and nested calls. */
import { CellError } from "../../functions/cells.ts";
import * as functions from "../../functions/index.ts";

type Block = unknown[][];

export function runFormula(text: string): Block {
  let at = text.trim().startsWith("=") ? 1 : 0;
  const source = text.trim();
  const skip = () => {
    while (source[at] === " ") at++;
  };
  const fail = (what: string): never => {
    throw new Error(`${what} at ${at} of ${source}`);
  };
  const literal = (): unknown => {
    skip();
    if (source[at] === '"') {
      let value = "";
      at++;
      for (;;) {
        if (at >= source.length) fail("open quote");
        if (source[at] === '"') {
          if (source[at + 1] !== '"') break;
          at++;
        }
        value += source[at++];
      }
      at++;
      return value;
    }
    const word =
      /^(?:TRUE|FALSE|[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)/.exec(source.slice(at))?.[0] ?? fail("no literal");
    at += word.length;
    return word === "TRUE" ? true : word === "FALSE" ? false : Number(word);
  };
  const argument = (): Block => {
    skip();
    if (source[at] === "," || source[at] === ")") return [[null]];
    if (source[at] === "{") {
      at++;
      const rows: unknown[][] = [[]];
      for (;;) {
        rows[rows.length - 1]!.push(literal());
        skip();
        const mark = source[at++];
        if (mark === "}") return rows;
        if (mark === ";") rows.push([]);
        else if (mark !== ",") fail("bad array constant");
      }
    }
    if (source.startsWith("CUT.", at)) return call();
    return [[literal()]];
  };
  const call = (): Block => {
    const name = /^CUT\.([A-Z][A-Z0-9.]*)\(/.exec(source.slice(at)) ?? fail("no call");
    at += name[0].length;
    const args: Block[] = [];
    for (;;) {
      skip();
      if (source[at] === ")" && args.length === 0) break;
      args.push(argument());
      skip();
      if (source[at] === ",") at++;
      else if (source[at] === ")") break;
      else fail("bad argument list");
    }
    at++;
    const run = (functions as unknown as Record<string, (...a: Block[]) => Block>)[name[1]!];
    if (!run) fail(`no worksheet function ${name[1]}`);
    return run!(...args);
  };
  skip();
  const answer = call();
  skip();
  if (at !== source.length) fail("text behind the call");
  return answer;
}

/** True when `value` prints as `printed` to the digits it shows. */
export function agrees(value: unknown, printed: string): boolean {
  if (value instanceof CellError) return value.code === printed;
  const bare = printed.trim().replace(/^"(.*)"$/, "$1");
  if (typeof value !== "number") return String(value) === bare;
  if (!/^[+-]?[\d.]+(?:e[+-]?\d+)?$/i.test(bare)) return false;
  const [mantissa = "", exponent = "0"] = bare.toLowerCase().split("e");
  const digits = (mantissa.split(".")[1] ?? "").length - Number(exponent);
  return Math.abs(value - Number(bare)) <= 0.5000001 * 10 ** -digits;
}
