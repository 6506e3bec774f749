/** Builds the desk and serves it on this machine under its content security policy. */
import fs from "node:fs";
import http from "node:http";
import type { AddressInfo } from "node:net";
import path from "node:path";
import { build, type Plugin } from "esbuild";

const root = path.resolve(import.meta.dirname, "../..");
export const OUT = path.join(root, "tests", ".out");
const TYPES: Record<string, string> = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css" };

export interface Served {
  readonly address: string;
  close(): Promise<void>;
}

export async function serveDesk(plugins: Plugin[] = []): Promise<Served> {
  const dist = path.join(OUT, "desk");
  fs.rmSync(dist, { recursive: true, force: true });
  fs.mkdirSync(dist, { recursive: true });
  await build({
    entryPoints: { desk: path.join(root, "taskpane/desk/main.ts") },
    outdir: dist,
    bundle: true,
    plugins,
    minify: !process.env.READABLE,
    format: "esm",
    splitting: true,
    target: "es2022",
    absWorkingDir: root,
    logLevel: "warning",
    legalComments: "none",
    chunkNames: "desk/[name]-[hash]",
    assetNames: "desk/[name]-[hash]",
    define: { "process.env.NODE_ENV": '"production"' },
    loader: { ".woff": "file", ".woff2": "file", ".ttf": "file", ".svg": "dataurl", ".png": "dataurl" },
  });
  const page = fs.readFileSync(path.join(root, "taskpane/desk.html"), "utf8");
  const policy = /content="(default-src[^"]+)"/.exec(page)![1]!;
  fs.writeFileSync(path.join(dist, "desk.html"), page);
  const server = http.createServer((request, response) => {
    const name = new URL(request.url!, "http://localhost").pathname;
    const file = path.join(dist, name === "/" ? "desk.html" : name);
    if (!file.startsWith(dist) || !fs.existsSync(file)) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, {
      "content-type": TYPES[path.extname(file)] ?? "application/octet-stream",
      "content-security-policy": policy,
    });
    fs.createReadStream(file).pipe(response);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}
