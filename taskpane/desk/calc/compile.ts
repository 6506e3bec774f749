/** One formula, relative to its own cell, as code: parsed by @borgar/fx, with the cells it reads as distances. */
import { type AstExpression, parse, parseA1Ref, parseStructRef, tokenize } from "@borgar/fx";
import { LAST_COLUMN, LAST_ROW, type Value } from "../model/types.ts";
import { ARITHMETIC } from "./arithmetic.ts";
import { functionNamed } from "./functions.ts";
import { areaAt, type Edge, edgeAt, type Reads } from "./reads.ts";
import {
  type Block,
  broadcast,
  error,
  Failure,
  finite,
  inSheet,
  isBlock,
  isError,
  type Operand,
  REF,
  Reference,
  toNumber,
  Unknown,
  VALUE,
} from "./values.ts";
import type { Code, Spot, World } from "./world.ts";

export interface Compiled {
  readonly code: Code;
  readonly reads: readonly Reads[];
  /** Worked out again at every change: RAND, NOW, OFFSET, INDIRECT. */
  readonly volatile: boolean;
}

type Locals = ReadonlyMap<string, { now: Operand }>;

export function compileFormula(formula: string, at: Spot, world: World): Compiled {
  const reads: Reads[] = [];
  let volatile = false;
  const seenNames = new Set<string>();

  /** Something that is not known here. What it reads is known all the same, so that its value can be called old. */
  const unknown = (what: string): Code => {
    const run = (): never => {
      throw new Unknown(what);
    };
    return { operand: run, value: run };
  };
  const constant = (value: Value): Code => ({ operand: () => value, value: () => value });

  /** An error that stops the working out of a piece is the piece's value. */
  const caught = <T extends Operand>(run: (spot: Spot) => T): ((spot: Spot) => T | Value) => {
    return (spot) => {
      try {
        return run(spot);
      } catch (thrown) {
        if (thrown instanceof Failure) return thrown.value;
        throw thrown;
      }
    };
  };

  /** Code of something that may be a reference: `value` reads the cells. */
  const readable = (operand: (spot: Spot) => Operand, array: boolean): Code => ({
    operand,
    value: (spot) => world.read(operand(spot), spot, array),
  });

  function reference(own: Reads, array: boolean): Code {
    reads.push(own);
    const one =
      own.top.fixed === own.bottom.fixed &&
      own.top.at === own.bottom.at &&
      own.left.fixed === own.right.fixed &&
      own.left.at === own.right.at;
    const operand = (spot: Spot): Operand => {
      const area = areaAt(own, spot.row, spot.column);
      return inSheet(area) ? new Reference(own.sheet, [area]) : REF;
    };
    if (!one) return readable(operand, array);
    return {
      operand,
      value(spot) {
        const row = edgeAt(own.top, spot.row);
        const column = edgeAt(own.left, spot.column);
        if (row < 0 || column < 0 || row > LAST_ROW || column > LAST_COLUMN) return REF;
        return world.value(own.sheet, row, column);
      },
    };
  }

  /** undefined for another workbook, or several sheets at once. */
  const sheetOf = (context: readonly string[] | undefined): number | undefined => {
    if (context === undefined || context.length === 0) return at.sheet;
    return context.length === 1 ? world.sheetNamed(context[0]!) : undefined;
  };

  function range(text: string, array: boolean): Code {
    const found = parseA1Ref(text);
    if (!found || !("range" in found)) return unknown(text);
    const { top, left, bottom, right, $top, $left, $bottom, $right } = found.range;
    const edge = (
      value: number | null | undefined,
      fixed: boolean | null | undefined,
      own: number,
      whole: number,
    ): Edge =>
      value === null || value === undefined
        ? { fixed: true, at: whole }
        : fixed
          ? { fixed: true, at: value }
          : { fixed: false, at: value - own };
    const sheet = sheetOf((found as { context?: string[] }).context);
    if (sheet === undefined) return unknown(text);
    return reference(
      {
        sheet,
        top: edge(top, $top, at.row, 0),
        bottom: edge(bottom, $bottom, at.row, LAST_ROW),
        left: edge(left, $left, at.column, 0),
        right: edge(right, $right, at.column, LAST_COLUMN),
      },
      array,
    );
  }

  function tablePart(text: string, array: boolean): Code {
    const found = parseStructRef(text);
    if (!found) return unknown(text);
    const { table: name, columns, sections } = found;
    const table = name ? world.tableNamed(name) : world.tableAt(at.sheet, at.row, at.column);
    if (table === undefined) return unknown(text);
    const { area, totals } = table.range;
    const place = (column: string | undefined, otherwise: number): number =>
      column === undefined ? otherwise : table.range.columns.findIndex((c) => c.toLowerCase() === column.toLowerCase());
    const first = place(columns?.[0], 0);
    const last = place(columns?.at(-1), table.range.columns.length - 1);
    if (first < 0 || last < 0) return constant(REF);
    const parts = (sections ?? []).map((section) => section.toLowerCase());
    const foot = area.bottom - (totals ? 1 : 0);
    let [top, bottom] = [area.top + 1, foot];
    let own = false;
    for (const part of parts) {
      if (part === "all") [top, bottom] = [area.top, area.bottom];
      else if (part === "headers") [top, bottom] = [area.top, parts.includes("data") ? foot : area.top];
      else if (part === "totals") {
        if (!totals) return constant(REF);
        [top, bottom] = [parts.includes("data") ? area.top + 1 : area.bottom, area.bottom];
      } else if (part === "this row" || part === "@") own = true;
    }
    const fixed = (line: number): Edge => ({ fixed: true, at: line });
    const lines = own
      ? { top: { fixed: false, at: 0 }, bottom: { fixed: false, at: 0 } }
      : { top: fixed(top), bottom: fixed(bottom) };
    const read = { sheet: table.sheet, ...lines, left: fixed(area.left + first), right: fixed(area.left + last) };
    const code = reference(read, array);
    if (!own) return code;
    // "This row" means a row of the table; anywhere else there is none.
    const inside = (spot: Spot) => spot.row > area.top && spot.row <= foot;
    return {
      operand: (spot) => (inside(spot) ? code.operand(spot) : VALUE),
      value: (spot) => (inside(spot) ? code.value(spot) : VALUE),
    };
  }

  function named(text: string, array: boolean, locals: Locals): Code {
    const local = locals.get(text.toLowerCase());
    if (local) return readable(() => local.now, array);
    const table = world.tableNamed(text);
    if (table) return tablePart(`${text}[]`, array);
    const bang = text.lastIndexOf("!");
    const sheet =
      bang < 0
        ? at.sheet
        : sheetOf([
            text
              .slice(0, bang)
              .replace(/^'(.*)'$/, "$1")
              .replaceAll("''", "'"),
          ]);
    const name = text.slice(bang + 1);
    if (sheet === undefined) return unknown(text);
    const formula = world.name(name, sheet);
    if (formula === undefined) return constant(error("#NAME?", `there is no name ${name} in this workbook`));
    const seen = `${sheet} ${name.toLowerCase()}`;
    if (seenNames.has(seen)) return constant(error("#VALUE!", `the name ${name} is made of itself`));
    seenNames.add(seen);
    try {
      return node(parse(tokenize(formula, { mergeRefs: true, negativeNumbers: true })), array, new Map());
    } catch {
      return unknown(formula);
    } finally {
      seenNames.delete(seen);
    }
  }

  function binary(operator: string, left: Code, right: Code): Code {
    if (operator === ":" || operator === "," || operator === " ") {
      const join = (spot: Spot): Operand => {
        const a = left.operand(spot);
        const b = right.operand(spot);
        if (isError(a)) return a;
        if (isError(b)) return b;
        if (!(a instanceof Reference) || !(b instanceof Reference)) return VALUE;
        if (a.sheet !== b.sheet) return operator === "," ? VALUE : REF;
        if (operator === ",") return new Reference(a.sheet, [...a.areas, ...b.areas]);
        const [p, q] = [a.areas[0]!, b.areas[0]!];
        const area =
          operator === ":"
            ? {
                top: Math.min(p.top, q.top),
                left: Math.min(p.left, q.left),
                bottom: Math.max(p.bottom, q.bottom),
                right: Math.max(p.right, q.right),
              }
            : {
                top: Math.max(p.top, q.top),
                left: Math.max(p.left, q.left),
                bottom: Math.min(p.bottom, q.bottom),
                right: Math.min(p.right, q.right),
              };
        return area.top > area.bottom || area.left > area.right ? error("#NULL!") : new Reference(a.sheet, [area]);
      };
      // What lies between two ends that are not plain cells is only known when it is worked out.
      if (operator === ":") volatile = true;
      return readable(join, false);
    }
    const work = ARITHMETIC[operator];
    if (work === undefined) return unknown(operator);
    const value = caught((spot): Value | Block => {
      const a = left.value(spot);
      const b = right.value(spot);
      if (typeof a === "number" && typeof b === "number") return work(a, b);
      if (!isBlock(a) && !isBlock(b)) {
        if (isError(a)) return a;
        if (isError(b)) return b;
        return work(a, b);
      }
      return broadcast([a, b], ([x, y]) => work(x!, y!));
    });
    return { operand: value, value };
  }

  function unary(operator: string, inner: Code, array: boolean): Code {
    if (operator === "#") {
      return readable((spot) => {
        const cell = inner.operand(spot);
        if (!(cell instanceof Reference)) return isError(cell) ? cell : REF;
        const { top, left } = cell.areas[0]!;
        const spilled = world.spill(cell.sheet, top, left);
        return spilled ? new Reference(cell.sheet, [spilled]) : REF;
      }, array);
    }
    if (operator === "@") {
      const value = (spot: Spot) => world.read(inner.operand(spot), { ...spot, single: true }, false);
      return { operand: value, value };
    }
    const work = (a: Value): Value => {
      if (operator === "+") return a;
      const number = toNumber(a);
      return finite(operator === "%" ? number / 100 : -number);
    };
    const value = caught((spot): Value | Block => {
      const a = inner.value(spot);
      return isBlock(a) ? broadcast([a], ([x]) => work(x!)) : isError(a) ? a : work(a);
    });
    return { operand: value, value };
  }

  function call(name: string, args: readonly (AstExpression | null)[], array: boolean, locals: Locals): Code {
    const definition = functionNamed(name, world.date1904);
    if (definition?.volatile) volatile = true;
    const inArray = array || definition?.arrays === true;
    const codes = args.map((arg) => (arg === null ? undefined : node(arg, inArray, locals)));
    if (definition === undefined) return unknown(name);
    if (codes.length < definition.least || codes.length > definition.most)
      return unknown(`${name} with ${codes.length}`);
    if (definition.kind === "lazy") {
      return readable(
        caught((spot) => definition.run(codes, spot, world)),
        array,
      );
    }
    if (definition.kind === "whole") {
      return readable(
        caught((spot) =>
          definition.run(
            codes.map((code) => code?.operand(spot)),
            spot,
            world,
          ),
        ),
        array,
      );
    }
    const { run } = definition;
    const each = (values: Value[]): Value => {
      if (!definition.takesErrors) for (const one of values) if (isError(one)) return one;
      return run(values);
    };
    const value = caught((spot): Value | Block => {
      const values = codes.map((code): Value | Block => (code === undefined ? null : code.value(spot)));
      return broadcast(values, each);
    });
    return { operand: value, value };
  }

  function node(ast: AstExpression, array: boolean, locals: Locals): Code {
    switch (ast.type) {
      case "Literal":
        return constant(ast.value);
      case "ErrorLiteral":
        return constant(error(ast.value));
      case "ReferenceIdentifier":
        if (ast.kind === "name") return named(ast.value, array, locals);
        return ast.kind === "table" ? tablePart(ast.value, array) : range(ast.value, array);
      case "BinaryExpression":
        return binary(ast.operator, node(ast.arguments[0]!, array, locals), node(ast.arguments[1]!, array, locals));
      case "UnaryExpression":
        return unary(ast.operator, node(ast.arguments[0]!, array, locals), array);
      case "ArrayExpression": {
        let whole = true;
        const cells = ast.elements.map((row) =>
          row.map((cell): Value => {
            if (cell.type === "Literal") return cell.value;
            if (cell.type === "ErrorLiteral") return error(cell.value);
            whole = false;
            return null;
          }),
        );
        return whole ? { operand: () => cells, value: () => cells } : unknown("an array of cells");
      }
      case "CallExpression":
        if (ast.callee.type !== "Identifier") return unknown("LAMBDA");
        return call(ast.callee.name, ast.arguments, array, locals);
      case "LetExpression": {
        const own = new Map(locals);
        const steps: { slot: { now: Operand }; code: Code }[] = [];
        for (const { id, init } of ast.declarations) {
          if (init === null) return unknown("LET");
          const slot = { now: undefined as Operand };
          steps.push({ slot, code: node(init, array, own) });
          own.set(id.name.toLowerCase(), slot);
        }
        if (ast.body === null) return unknown("LET");
        const body = node(ast.body, array, own);
        return readable((spot) => {
          // A cell that is read meanwhile may run this very code for itself.
          const before = steps.map(({ slot }) => slot.now);
          try {
            for (const { slot, code } of steps) slot.now = code.operand(spot);
            return body.operand(spot);
          } finally {
            steps.forEach(({ slot }, i) => {
              slot.now = before[i];
            });
          }
        }, array);
      }
      default:
        return unknown(ast.type);
    }
  }

  let ast: AstExpression;
  try {
    ast = parse(tokenize(formula, { mergeRefs: true, negativeNumbers: true }));
  } catch {
    throw new Unknown(formula);
  }
  const code = node(ast, false, new Map());
  return { code, reads, volatile };
}
