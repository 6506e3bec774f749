/**
 * The worksheet functions inside the desk's formula engine. They are registered as classes of the engine, not by its
 * convenience wrapper: only so does a blank cell stay blank and an omitted argument stay omitted.
 */
import type { Ctor, Nullable } from "@univerjs/core";
import {
  type ArrayValueObject,
  ArrayValueObject as ArrayValues,
  BaseFunction,
  type BaseValueObject,
  BooleanValueObject,
  ErrorValueObject,
  FunctionType,
  type IFunctionInfo,
  NullValueObject,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/engine-formula";
import { CellError } from "../../functions/cells.ts";
import described from "../../functions/generated/functions.json" with { type: "json" };
import * as functions from "../../functions/index.ts";

export const NAMESPACE = "CUT";

interface Described {
  readonly id: string;
  readonly description: string;
  readonly parameters: readonly { name: string; description: string; optional?: boolean }[];
}
const DESCRIBED = new Map((described as { functions: Described[] }).functions.map((f) => [f.id, f]));

/** Content of one value of the engine: null is blank, an error is its code as text. */
function plain(value: Nullable<BaseValueObject>): unknown {
  if (value === null || value === undefined || value.isNull()) return null;
  return value.getValue();
}

function toArgument(value: Nullable<BaseValueObject>): unknown[][] {
  if (value === null || value === undefined) return [[null]];
  if (!value.isArray()) return [[plain(value)]];
  const block = value as ArrayValueObject;
  const cells = block.getArrayValue();
  const columns = block.getColumnCount();
  return Array.from({ length: block.getRowCount() }, (_, r) =>
    Array.from({ length: columns }, (_, c) => plain(cells[r]?.[c])),
  );
}

/** What the grid remembers beside an error value, so that the reason can be shown. */
export interface ErrorNote {
  readonly why: string;
}

/** The engine keeps one object per code and message, so the note on it is the right one. */
function toError({ code, message }: CellError): BaseValueObject {
  const value = ErrorValueObject.create(code as Parameters<typeof ErrorValueObject.create>[0], message);
  return value.withCustomData({ why: message } satisfies ErrorNote);
}

function toValue(cell: unknown): BaseValueObject {
  if (cell instanceof CellError) return toError(cell);
  if (typeof cell === "number") return NumberValueObject.create(cell);
  if (typeof cell === "boolean") return BooleanValueObject.create(cell);
  if (cell === null || cell === undefined || cell === "") return StringValueObject.create("");
  return StringValueObject.create(String(cell));
}

function toAnswer(block: unknown[][]): BaseValueObject {
  const rows = block.length;
  const columns = block[0]?.length ?? 0;
  if (rows === 0 || columns === 0) return NullValueObject.create();
  if (rows === 1 && columns === 1) return toValue(block[0]![0]);
  return ArrayValues.create({
    calculateValueList: block.map((row) => row.map(toValue)),
    rowCount: rows,
    columnCount: columns,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}

type Run = (...args: unknown[][][]) => unknown[][];

function functionClass(run: Run, least: number, most: number): Ctor<BaseFunction> {
  return class extends BaseFunction {
    override minParams = least;
    override maxParams = most;
    override calculate(...values: BaseValueObject[]): BaseValueObject {
      try {
        return toAnswer(run(...values.map(toArgument)));
      } catch (problem) {
        // A throw would stop the engine for the whole workbook.
        return toError(new CellError("#VALUE!", `this should not happen, please report it: ${String(problem)}`));
      }
    }
  } as unknown as Ctor<BaseFunction>;
}

/** Constructor and name of each function, as the engine's plugin wants them. */
export function functionClasses(): [Ctor<BaseFunction>, string][] {
  return Object.entries(functions).map(([id, run]) => {
    const parameters = DESCRIBED.get(id)?.parameters;
    // Too few arguments are told by the function itself, in words; too many cannot be.
    const most = parameters?.length ?? 30;
    return [functionClass(run as Run, 0, most), `${NAMESPACE}.${id}`];
  });
}

/** Help shown while a formula is typed. */
export function functionHelp(): IFunctionInfo[] {
  return Object.keys(functions).map((id) => {
    const info = DESCRIBED.get(id);
    return {
      functionName: `${NAMESPACE}.${id}`,
      functionType: FunctionType.User,
      description: info?.description ?? "",
      abstract: info?.description ?? "",
      functionParameter: (info?.parameters ?? []).map(({ name, description, optional }) => ({
        name,
        detail: optional ? `${description} May be left out.` : description,
        example: "",
        require: optional ? 0 : 1,
        repeat: 0,
      })),
    };
  });
}
