// What the person at the keyboard can mend is a sentence; everything else is a fault of ours and keeps its stack.
import { parseArgs } from "node:util";

export class Sentence extends Error {}

/** Options of the commands that build or serve, read strictly: an unknown one or a missing value is a sentence. */
const OPTIONS = {
  base: { type: "string" },
  "support-page": { type: "string" },
  "help-page": { type: "string" },
  port: { type: "string" },
  https: { type: "boolean" },
  readable: { type: "boolean" },
  "local-office": { type: "boolean" },
};
export const BUILDING = ["base", "support-page", "help-page", "readable", "local-office"];
export const SERVING = [...BUILDING, "port", "https"];

export function options(args, allowed) {
  const words = allowed.map((name) => `--${name}`).join(", ");
  try {
    const { values } = parseArgs({
      args,
      options: Object.fromEntries(allowed.map((name) => [name, OPTIONS[name]])),
      strict: true,
    });
    return values;
  } catch (problem) {
    throw new Sentence(`${problem.message.split(". ")[0]}. Allowed: ${words}.`);
  }
}

/** An https address without a trailing slash: where dist will be served, or a page to point to. */
export function address(option, text) {
  let url;
  try {
    url = new URL(text);
  } catch {}
  const fine =
    url?.protocol === "https:" && url.hostname !== "" && !/[\s"'<>\\]/.test(text) && url.username + url.password === "";
  const bare = option !== "base" || (fine && url.search + url.hash === "" && !/[?#]/.test(text));
  if (!fine || !bare) {
    const example = option === "base" ? "https://tools.example.org/tablefeed" : "https://tools.example.org/help";
    throw new Sentence(`--${option} is "${text}"; an https address is wanted, e.g. ${example}`);
  }
  return text.replace(/\/+$/, "");
}

export function portNumber(text) {
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port < 1 || port > 65535)
    throw new Sentence(`--port is "${text}"; a whole number from 1 to 65535 is wanted.`);
  return port;
}
