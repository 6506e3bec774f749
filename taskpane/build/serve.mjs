// Static files of one folder, for this machine only.
import fs from "node:fs";
import http from "node:http";
import https from "node:https";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { headerOf } from "./policy.mjs";
import { Sentence } from "./say.mjs";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  ".xml": "application/xml",
  ".txt": "text/plain; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
  ".ttf": "font/ttf",
};
const DAY = 86_400;
/** What the names of the files say about how long a browser may keep them. */
const KEPT = [
  [/^\/desk\/.*-[A-Z0-9]{8}\.\w+$/, `public, max-age=${365 * DAY}, immutable`],
  [/^\/assets\//, `public, max-age=${DAY}`],
  [/^/, "no-cache"],
];

/** The path that a request asks for; undefined when it is not one. */
function pathOf(target) {
  const [raw = ""] = target.split(/[?#]/, 1);
  if (!raw.startsWith("/") || raw.startsWith("//")) return undefined;
  let name;
  try {
    name = decodeURIComponent(raw);
  } catch {
    return undefined;
  }
  return /[\0\\]/.test(name) ? undefined : name;
}

/** The file of a path inside the folder; undefined when there is none, or when a link leads out of the folder. */
function fileOf(folder, name) {
  try {
    const inside = fs.realpathSync(folder);
    const file = fs.realpathSync(path.join(inside, name));
    return file.startsWith(inside + path.sep) && fs.statSync(file).isFile() ? file : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Answers requests for the files of `folder`; "/" is the desk. `ownName` says whether a Host header means this server:
 * a page elsewhere that makes its own name point here (DNS rebinding) brings another one.
 */
export function answerFrom(folder, ownName) {
  const desk = () => {
    const file = fileOf(folder, "/desk.html");
    return file === undefined ? "default-src 'none'" : headerOf("desk.html", fs.readFileSync(file, "utf8"));
  };
  const refuse = (response, status, text, headers = {}) =>
    response.writeHead(status, { "content-type": "text/plain", ...headers }).end(text);
  return async (request, response) => {
    try {
      if (!ownName(request.headers.host ?? "")) return refuse(response, 421, "not the name of this server");
      if (request.method !== "GET" && request.method !== "HEAD")
        return refuse(response, 405, "only GET and HEAD", { allow: "GET, HEAD" });
      const name = pathOf(request.url ?? "");
      if (name === undefined) return refuse(response, 400, "not an address");
      const page = name === "/" ? "/desk.html" : name;
      let file = fileOf(folder, page);
      // A build is just putting a new folder in place.
      for (let turn = 0; file === undefined && turn < 20 && !fs.existsSync(folder); turn++) {
        await pause(5);
        file = fileOf(folder, page);
      }
      if (file === undefined) return refuse(response, 404, "not found");
      const body = fs.readFileSync(file);
      const { mtimeMs } = fs.statSync(file);
      const headers = {
        "content-type": TYPES[path.extname(file)] ?? "application/octet-stream",
        "content-length": body.length,
        "cache-control": KEPT.find(([pattern]) => pattern.test(page))[1],
        etag: `"${body.length.toString(36)}-${Math.round(mtimeMs).toString(36)}"`,
        "x-content-type-options": "nosniff",
        "referrer-policy": "no-referrer",
        "content-security-policy": page === "/taskpane.html" ? headerOf("taskpane.html", body.toString()) : desk(),
      };
      // Excel on the web fetches the metadata from a page of its own.
      if (page === "/functions.json") headers["access-control-allow-origin"] = "*";
      if (request.headers["if-none-match"] === headers.etag) {
        const { "content-length": _, ...rest } = headers;
        return response.writeHead(304, rest).end();
      }
      response.writeHead(200, headers).end(request.method === "HEAD" ? undefined : body);
    } catch (problem) {
      console.error(`${request.method} ${request.url}: ${problem.message}`);
      if (!response.headersSent) refuse(response, 500, "the server could not read this file");
      else response.destroy();
    }
  };
}

const NAMES = ["localhost", "127.0.0.1", "[::1]"];

/**
 * Serves `folder` on this machine.
 *
 * @param settings - port, 0 takes any; last: the highest port to try when it is taken; pair: key and certificate for https
 * @returns where it is served, and how to stop it
 * @throws Sentence when the port cannot be had
 */
export async function serve({ folder, port, last = port, pair }) {
  let own = port;
  const standard = pair ? 443 : 80;
  const ownName = (host) => NAMES.some((name) => host === `${name}:${own}` || (own === standard && host === name));
  const answer = answerFrom(folder, ownName);
  const server = pair ? https.createServer(pair, answer) : http.createServer(answer);
  for (;;) {
    try {
      await new Promise((resolve, reject) => {
        server.once("error", reject);
        server.listen(own, "127.0.0.1", () => {
          server.off("error", reject);
          resolve();
        });
      });
      break;
    } catch (problem) {
      if (problem.code === "EADDRINUSE" && own < last) {
        console.log(`Port ${own} is taken, trying ${own + 1} …`);
        own++;
      } else if (problem.code === "EADDRINUSE")
        throw new Sentence(
          `Port ${own} is taken. Stop what uses it, or choose another: npm start -- --port ${own + 1}`,
        );
      else if (problem.code === "EACCES")
        throw new Sentence(`Port ${own} is not free to everybody; one from 1024 up is, e.g. --port 3000`);
      else throw problem;
    }
  }
  own = server.address().port;
  return {
    port: own,
    address: `${pair ? "https" : "http"}://localhost:${own}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
