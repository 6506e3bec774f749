/** The local server, asked as browsers ask and as they never would; the build that changes what it serves. */
import { spawn } from "node:child_process";
import fs from "node:fs";
import net from "node:net";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
// @ts-expect-error plain script without types
import { replaceFolder } from "../../taskpane/build/pages.mjs";
// @ts-expect-error plain script without types
import { serve } from "../../taskpane/build/serve.mjs";
import { root } from "./files.ts";

interface Served {
  readonly port: number;
  readonly address: string;
  close(): Promise<void>;
}

const work = path.join(root, "tests", ".out", "server");
const folder = path.join(work, "served");
const PAGE = (body: string) =>
  `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'" />${body}`;

function fill(out: string, mark = "one"): void {
  fs.mkdirSync(path.join(out, "assets"), { recursive: true });
  fs.mkdirSync(path.join(out, "desk"));
  fs.writeFileSync(path.join(out, "desk.html"), PAGE(mark));
  fs.writeFileSync(path.join(out, "taskpane.html"), PAGE("pane"));
  fs.writeFileSync(path.join(out, "functions.json"), "{}");
  fs.writeFileSync(path.join(out, "assets", "icon-16.png"), "icon");
  fs.writeFileSync(path.join(out, "desk", "part-AB12CD34.js"), "1");
  fs.writeFileSync(path.join(out, "a b.txt"), "blank in its name");
}

/** Sends exactly these bytes; the whole answer as text. */
function send(port: number, request: string): Promise<string> {
  return new Promise((resolve, reject) => {
    let answer = "";
    const socket = net.connect(port, "127.0.0.1", () => socket.write(request));
    socket.on("data", (part) => {
      answer += part.toString();
    });
    socket.on("end", () => resolve(answer));
    socket.on("error", reject);
  });
}
const status = (answer: string) => Number(/^HTTP\/1\.1 (\d+)/.exec(answer)?.[1]);
const header = (answer: string, name: string) => new RegExp(`^${name}: (.*)\\r$`, "im").exec(answer)?.[1];

describe("the local server (house)", () => {
  let served: Served;
  const ask = (target: string, { method = "GET", host = `localhost:${served.port}`, more = "" } = {}) =>
    send(served.port, `${method} ${target} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n${more}\r\n`);
  beforeAll(async () => {
    fs.rmSync(work, { recursive: true, force: true });
    fill(folder);
    fs.writeFileSync(path.join(work, "secret.txt"), "secret");
    fs.symlinkSync(path.join(work, "secret.txt"), path.join(folder, "link.txt"));
    fs.symlinkSync(work, path.join(folder, "above"));
    fs.symlinkSync(path.join(folder, "functions.json"), path.join(folder, "inside.json"));
    served = await serve({ folder, port: 0 });
  });
  afterAll(() => served?.close());

  it("shows the desk first, and every file below its folder", async () => {
    const page = await ask("/");
    expect(status(page)).toBe(200);
    expect(page.endsWith(PAGE("one"))).toBe(true);
    expect(await ask("/a%20b.txt?x=1#y")).toMatch(/blank in its name$/);
    for (const missing of ["/nothing.html", "/assets", "/assets/", "/."]) expect(status(await ask(missing))).toBe(404);
  });
  it("answers 400 to what is no address, and lives on", async () => {
    for (const target of ["/%", "/%zz", "//[", "//desk.html", "/%c3%28", "/a%00b", "/..%5csecret.txt", "desk.html"])
      expect(status(await ask(target)), target).toBe(400);
    expect(status(await ask(`http://localhost:${served.port}/desk.html`))).toBe(400);
    expect(status(await ask("/"))).toBe(200);
  });
  it("answers 405 to everything but GET and HEAD, and says what it takes", async () => {
    for (const method of ["POST", "PUT", "DELETE", "OPTIONS", "PATCH", "TRACE"]) {
      const answer = await ask("/", { method });
      expect(status(answer), method).toBe(405);
      expect(header(answer, "allow")).toBe("GET, HEAD");
    }
    const head = await ask("/", { method: "HEAD" });
    expect(status(head)).toBe(200);
    expect(header(head, "content-length")).toBe(String(PAGE("one").length));
    expect(head.split("\r\n\r\n")[1]).toBe("");
  });
  it("leaves its folder neither by dots nor by links", async () => {
    const ways = ["/../secret.txt", "/%2e%2e/secret.txt", "/assets/../../secret.txt", "/link.txt", "/above/secret.txt"];
    for (const way of ways) {
      const answer = await ask(way);
      expect(status(answer), way).toBe(404);
      expect(answer).not.toContain("secret");
    }
    expect(status(await ask("/inside.json"))).toBe(200);
  });
  it("answers to its own names only, so that no other site can lend it one", async () => {
    for (const host of [`localhost:${served.port}`, `127.0.0.1:${served.port}`, `[::1]:${served.port}`])
      expect(status(await ask("/", { host })), host).toBe(200);
    const others = [
      `evil.example:${served.port}`,
      "evil.example",
      "localhost",
      "localhost:1",
      `localhost.:${served.port}`,
    ];
    for (const host of others) expect(status(await ask("/", { host })), host).toBe(421);
    expect(status(await send(served.port, "GET / HTTP/1.0\r\n\r\n"))).toBe(421);
  });
  it("states the policy of each page, and who may frame it", async () => {
    expect(header(await ask("/"), "content-security-policy")).toBe(
      "default-src 'none'; script-src 'self'; frame-ancestors 'none'",
    );
    const pane = header(await ask("/taskpane.html"), "content-security-policy")!;
    expect(pane).toMatch(/^default-src 'none'; script-src 'self'; frame-ancestors 'self' https:/);
    expect(pane).toContain("https://*.officeapps.live.com");
    expect(pane.split("frame-ancestors")[1]).not.toMatch(/http:|\s\*(?:\s|$)|https:\/\/\*(?:\s|$)/);
    expect(header(await ask("/functions.json"), "x-content-type-options")).toBe("nosniff");
  });
  it("lets icons and named parts be kept, and asks again for pages", async () => {
    expect(header(await ask("/assets/icon-16.png"), "cache-control")).toBe("public, max-age=86400");
    expect(header(await ask("/desk/part-AB12CD34.js"), "cache-control")).toMatch(/max-age=31536000, immutable/);
    const page = await ask("/desk.html");
    expect(header(page, "cache-control")).toBe("no-cache");
    const again = await ask("/desk.html", { more: `If-None-Match: ${header(page, "etag")}\r\n` });
    expect(status(again)).toBe(304);
    expect(again.split("\r\n\r\n")[1]).toBe("");
  });
  it("lets Excel on the web fetch the metadata, and nothing else across sites", async () => {
    expect(header(await ask("/functions.json"), "access-control-allow-origin")).toBe("*");
    expect(header(await ask("/desk.html"), "access-control-allow-origin")).toBeUndefined();
  });
  it("takes the next port when it may, and says so in a sentence when it may not", async () => {
    const next: Served = await serve({ folder, port: served.port, last: Math.min(served.port + 9, 65535) });
    expect(next.port).toBeGreaterThan(served.port);
    await next.close();
    await expect(serve({ folder, port: served.port })).rejects.toThrow(
      `Port ${served.port} is taken. Stop what uses it, or choose another: npm start -- --port ${served.port + 1}`,
    );
  });
});

describe("a build while something is served (house)", () => {
  const swapped = path.join(work, "swapped");
  it("changes everything at once: every answer is the old page or the new one", async () => {
    fill(swapped, "build 0");
    const served: Served = await serve({ folder: swapped, port: 0 });
    const seen = new Set<string>();
    let building = true;
    const reader = (async () => {
      while (building) {
        const answer = await fetch(served.address);
        expect(answer.status).toBe(200);
        seen.add((await answer.text()).slice(-2));
      }
    })();
    for (let i = 1; i <= 40; i++) {
      await replaceFolder(swapped, async (out: string) => fill(out, `build ${i}`), work);
      await fetch(served.address);
    }
    building = false;
    await reader;
    await served.close();
    expect(seen.size).toBeGreaterThan(5);
    expect(fs.readFileSync(path.join(swapped, "desk.html"), "utf8")).toMatch(/build 40$/);
  });
  it("lets two builds end with one of them whole", async () => {
    const make = (mark: string) => replaceFolder(swapped, async (out: string) => fill(out, mark), work);
    await Promise.all(["a", "b", "c", "d"].map(make));
    expect(fs.readFileSync(path.join(swapped, "desk.html"), "utf8")).toMatch(/[abcd]$/);
    expect(fs.existsSync(path.join(swapped, "assets", "icon-16.png"))).toBe(true);
  });
  it("changes nothing when it fails, and leaves nothing behind", async () => {
    const before = fs.readFileSync(path.join(swapped, "desk.html"), "utf8");
    const half = async (out: string) => {
      fill(out, "half");
      throw new Error("no such entry");
    };
    const failing = replaceFolder(swapped, half, work);
    await expect(failing).rejects.toThrow("no such entry");
    expect(fs.readFileSync(path.join(swapped, "desk.html"), "utf8")).toBe(before);
    expect(fs.readdirSync(work).filter((name) => name.startsWith("build-"))).toEqual([]);
  });
});

describe("the build script (house)", () => {
  /** Runs the script to its end. */
  const run = (...words: string[]): Promise<{ status: number | null; text: string }> =>
    new Promise((resolve) => {
      const child = spawn("node", ["build.mjs", ...words], { cwd: root });
      let text = "";
      for (const stream of [child.stdout, child.stderr])
        stream.on("data", (part) => {
          text += part.toString();
        });
      child.on("close", (code) => resolve({ status: code, text: text.trim() }));
    });
  it.each([
    ["start --port abc", '--port is "abc"; a whole number from 1 to 65535 is wanted.'],
    ["start --port 0", '--port is "0"; a whole number from 1 to 65535 is wanted.'],
    ["start --port 65536", '--port is "65536"; a whole number from 1 to 65535 is wanted.'],
    ["build --base http://tools.example.org", '--base is "http://tools.example.org"; an https address is wanted'],
    [
      "build --base https://tools.example.org/?a=1",
      "an https address is wanted, e.g. https://tools.example.org/tablefeed",
    ],
    ["build --base https://", "an https address is wanted"],
    ["build --base", "argument missing"],
    ["build --help-page me", '--help-page is "me"; an https address is wanted'],
    ["start --prot 3000", "Unknown option '--prot'. Allowed: --base"],
    ["serve", '"serve" is no command; there are start, build, test'],
  ])("answers %s with a sentence", async (words, sentence) => {
    const { status: code, text } = await run(...words.split(" "));
    expect(text).toContain(sentence);
    expect(text.split("\n")).toHaveLength(1);
    expect(code).toBe(2);
  });
  it("says that a port is taken, before it builds anything", async () => {
    const busy = net.createServer().listen(0, "127.0.0.1");
    await new Promise((ready) => busy.once("listening", ready));
    const { port } = busy.address() as net.AddressInfo;
    const { status: code, text } = await run("start", "--port", String(port));
    busy.close();
    expect(text).toMatch(new RegExp(`^Port ${port} is taken\\. Stop what uses it`));
    expect(code).toBe(2);
  });
});
