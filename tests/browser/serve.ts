/** Builds the desk as the build does and serves it on this machine under its content security policy. */
import fs from "node:fs";
import http from "node:http";
import type { AddressInfo, Socket } from "node:net";
import path from "node:path";
import * as esbuild from "esbuild";

const root = path.resolve(import.meta.dirname, "../..");
export const OUT = path.join(root, "tests", ".out");
const TYPES: Record<string, string> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".webmanifest": "application/manifest+json",
};

export interface Served {
  readonly address: string;
  /** Ends the server, open connections included, as when its machine is switched off. */
  close(): Promise<void>;
}

interface Bundle {
  bundleDesk(settings: { esbuild: unknown; root: string; dist: string; common: object }): Promise<void>;
}

const common = {
  minify: !process.env.READABLE,
  logLevel: "warning",
  define: { "process.env.NODE_ENV": '"production"' },
};

/** @param folder - name of the folder under tests/.out that it is built into: one for each test file */
export async function serveDesk(folder = "desk"): Promise<Served> {
  const bundle = (await import(path.join(root, "taskpane/desk/bundle.mjs"))) as Bundle;
  const dist = path.join(OUT, folder);
  fs.rmSync(dist, { recursive: true, force: true });
  fs.mkdirSync(dist, { recursive: true });
  await bundle.bundleDesk({ esbuild, root, dist, common });
  const { policyOf } = (await import(path.join(root, "taskpane/build/policy.mjs"))) as {
    policyOf(page: string): string;
  };
  const policy = policyOf(fs.readFileSync(path.join(dist, "desk.html"), "utf8"));
  const sockets = new Set<Socket>();
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
  server.on("connection", (socket) => {
    sockets.add(socket);
    socket.on("close", () => sockets.delete(socket));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        for (const socket of sockets) socket.destroy();
      }),
  };
}
