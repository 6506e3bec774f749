/** Conditions as SUMIF, COUNTIFS and their kin take them: ">=2", "drill*", 5, "<>". */
import type { Value } from "../../model/types.ts";
import { isError, numberInText } from "../values.ts";
import { hasPattern, pattern } from "./arguments.ts";

export function condition(wanted: Value): (value: Value) => boolean {
  if (typeof wanted === "number") return (value) => value === wanted || numberOf(value) === wanted;
  if (typeof wanted === "boolean") return (value) => value === wanted;
  if (wanted === null) return (value) => value === 0;
  if (isError(wanted)) return (value) => isError(value) && value.error === wanted.error;
  const [, operator = "", rest = ""] = /^(<=|>=|<>|<|>|=)?([\s\S]*)$/.exec(wanted)!;
  const number = numberInText(rest);
  const word = rest.toLowerCase();
  if (operator === "" || operator === "=" || operator === "<>") {
    const same = equal(rest, number, operator);
    return operator === "<>" ? (value) => !same(value) : same;
  }
  const holds = (order: number): boolean =>
    operator === "<" ? order < 0 : operator === ">" ? order > 0 : operator === "<=" ? order <= 0 : order >= 0;
  if (number !== undefined) return (value) => typeof value === "number" && holds(value - number);
  return (value) => {
    if (typeof value !== "string") return false;
    const own = value.toLowerCase();
    return holds(own === word ? 0 : own < word ? -1 : 1);
  };
}

const numberOf = (value: Value): number | undefined =>
  typeof value === "string" && value.trim() !== "" ? numberInText(value) : undefined;

function equal(rest: string, number: number | undefined, operator: string): (value: Value) => boolean {
  if (rest === "") return operator === "" ? (value) => value === null || value === "" : (value) => value === null;
  const flag = /^(?:true|false)$/i.test(rest) ? rest.toLowerCase() === "true" : undefined;
  if (flag !== undefined) return (value) => value === flag;
  if (number !== undefined) return (value) => value === number || numberOf(value) === number;
  if (rest.startsWith("#")) return (value) => isError(value) && value.error.toLowerCase() === rest.toLowerCase();
  if (hasPattern(rest)) {
    const like = pattern(rest);
    return (value) => typeof value === "string" && like.test(value);
  }
  const word = rest.toLowerCase();
  return (value) => typeof value === "string" && value.toLowerCase() === word;
}
