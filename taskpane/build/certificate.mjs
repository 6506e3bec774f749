// A certificate for this machine alone, made by openssl and kept beside the packages; Excel loads https only.
import { spawnSync } from "node:child_process";
import { createPrivateKey, X509Certificate } from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import { Sentence } from "./say.mjs";

const DAYS = 90;
/** Renewed when fewer days than these are left, so that it never runs out during a day's work. */
const RENEW = 14;

/** A leaf: it vouches for localhost and can sign nothing, so whoever gets the key gains no other name. */
const REQUEST = `[req]
distinguished_name = name
x509_extensions = leaf
prompt = no
[name]
CN = localhost
[leaf]
basicConstraints = critical, CA:FALSE
keyUsage = critical, digitalSignature, keyEncipherment
extendedKeyUsage = serverAuth
subjectAltName = DNS:localhost, IP:127.0.0.1
subjectKeyIdentifier = hash
`;

/** What is on disk, when it can still be used. */
function kept(key, cert, now) {
  try {
    const pair = { key: fs.readFileSync(key), cert: fs.readFileSync(cert) };
    const read = new X509Certificate(pair.cert);
    const fine =
      !read.ca &&
      read.checkPrivateKey(createPrivateKey(pair.key)) &&
      Date.parse(read.validFrom) <= now &&
      Date.parse(read.validTo) > now + RENEW * 86_400_000 &&
      // Windows keeps no such bits: there the folder of the user does it.
      (process.platform === "win32" || (fs.statSync(key).mode & 0o077) === 0);
    return fine ? pair : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Key and certificate from `folder`, made anew when they are missing, worn out or readable by others.
 *
 * @returns the pair, the file of the certificate, and whether it is new and has to be trusted again
 */
export function certificate(folder, now = Date.now()) {
  const [key, cert] = ["key.pem", "cert.pem"].map((file) => path.join(folder, file));
  const old = kept(key, cert, now);
  if (old !== undefined) return { pair: old, file: cert, fresh: false };
  fs.mkdirSync(folder, { recursive: true, mode: 0o700 });
  fs.chmodSync(folder, 0o700);
  const work = fs.mkdtempSync(path.join(folder, "new-"));
  try {
    const [newKey, newCert, request] = ["key.pem", "cert.pem", "request.cnf"].map((file) => path.join(work, file));
    fs.writeFileSync(request, REQUEST);
    // Made before openssl writes into it: nobody else can read the key at any moment.
    fs.writeFileSync(newKey, "", { mode: 0o600 });
    const wanted = `req -x509 -newkey rsa:2048 -nodes -sha256 -days ${DAYS} -keyout`.split(" ");
    const made = spawnSync("openssl", [...wanted, newKey, "-out", newCert, "-config", request], { encoding: "utf8" });
    if (made.error || made.status !== 0) {
      const why = made.error ? "openssl is not installed" : "openssl could not make a certificate";
      throw new Sentence(`${why}; serve dist over https with a certificate of your own.`);
    }
    fs.chmodSync(newKey, 0o600);
    fs.renameSync(newKey, key);
    fs.renameSync(newCert, cert);
  } finally {
    fs.rmSync(work, { recursive: true, force: true });
  }
  return { pair: { key: fs.readFileSync(key), cert: fs.readFileSync(cert) }, file: cert, fresh: true };
}
