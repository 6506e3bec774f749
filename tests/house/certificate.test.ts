/** The certificate of the local https trial, as openssl and node read it. */
import { spawnSync } from "node:child_process";
import { X509Certificate } from "node:crypto";
import fs from "node:fs";
import https from "node:https";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
// @ts-expect-error plain script without types
import { certificate } from "../../taskpane/build/certificate.mjs";
// @ts-expect-error plain script without types
import { serve } from "../../taskpane/build/serve.mjs";
import { root } from "./files.ts";

interface Made {
  readonly pair: { readonly key: Buffer; readonly cert: Buffer };
  readonly file: string;
  readonly fresh: boolean;
}
const DAY = 86_400_000;
const folder = path.join(root, "tests", ".out", "https");
const mode = (file: string) => fs.statSync(path.join(folder, file)).mode & 0o777;

describe("the certificate for this machine (house)", () => {
  let made: Made;
  beforeAll(() => {
    fs.rmSync(folder, { recursive: true, force: true });
    made = certificate(folder);
  });
  afterAll(() => fs.rmSync(folder, { recursive: true, force: true }));

  it("is for localhost alone, for servers alone, and can sign no other", () => {
    const read = new X509Certificate(made.pair.cert);
    expect(read.ca).toBe(false);
    expect(read.subjectAltName).toBe("DNS:localhost, IP Address:127.0.0.1");
    const { stdout } = spawnSync("openssl", ["x509", "-in", made.file, "-noout", "-text"], { encoding: "utf8" });
    expect(stdout).toMatch(/Basic Constraints: critical\s+CA:FALSE/);
    expect(stdout).toMatch(/Extended Key Usage: \s+TLS Web Server Authentication\n/);
    expect(stdout).not.toMatch(/Certificate Sign/);
  });
  it("keeps its key to its owner", () => {
    expect([mode("key.pem"), mode(".")]).toEqual([0o600, 0o700]);
    expect(fs.readdirSync(folder).sort()).toEqual(["cert.pem", "key.pem"]);
  });
  it("stays the same while it is good, and is renewed before it ends", () => {
    const again: Made = certificate(folder);
    expect(again.fresh).toBe(false);
    expect(again.pair.cert.equals(made.pair.cert)).toBe(true);
    const end = Date.parse(new X509Certificate(made.pair.cert).validTo);
    expect(certificate(folder, end - 15 * DAY).fresh).toBe(false);
    const renewed: Made = certificate(folder, end - 13 * DAY);
    expect(renewed.fresh).toBe(true);
    expect(renewed.pair.cert.equals(made.pair.cert)).toBe(false);
  });
  it("is made anew when others could read the key, or when key and certificate do not belong together", () => {
    fs.chmodSync(path.join(folder, "key.pem"), 0o644);
    expect(certificate(folder).fresh).toBe(true);
    expect(mode("key.pem")).toBe(0o600);
    fs.writeFileSync(path.join(folder, "cert.pem"), made.pair.cert);
    expect(certificate(folder).fresh).toBe(true);
    fs.writeFileSync(path.join(folder, "cert.pem"), "no certificate");
    expect(certificate(folder).fresh).toBe(true);
  });
  it("serves https to a browser that trusts it", async () => {
    const { pair } = certificate(folder) as Made;
    const served = await serve({ folder: path.join(root, "taskpane", "assets"), port: 0, pair });
    const code = await new Promise((resolve, reject) => {
      https
        .get(`https://localhost:${served.port}/icon-16.png`, { ca: pair.cert, agent: false }, (answer) => {
          answer.resume();
          resolve(answer.statusCode);
        })
        .on("error", reject);
    });
    await served.close();
    expect(code).toBe(200);
  });
});
