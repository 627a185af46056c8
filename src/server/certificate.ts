/** The certificate that phones see: a given one, or one made at the first start and kept beside the database. */
import { createPrivateKey, generateKeyPairSync, randomBytes, X509Certificate } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { isIP } from "node:net";
import { join } from "node:path";
import forge from "node-forge";
import { type Message, message } from "../text/message.ts";

export interface Certificate {
  /** PEM. */
  readonly key: string;
  /** PEM. */
  readonly certificate: string;
  /** SHA-256 of the certificate, as browsers show it. */
  readonly fingerprint: string;
}

export type FoundCertificate =
  | ({ readonly ok: true } & Certificate)
  | { readonly ok: false; readonly says: Message };

const DAY_MS = 86_400_000;
/** Phones' systems refuse more than 825 days of one that is trusted by hand. */
const DAYS = 800;
/** One that ends sooner is made anew. */
const DAYS_LEFT = 30;

export interface Wanted {
  readonly folder: string;
  /** Names and addresses of this machine. */
  readonly hosts: readonly string[];
  readonly now: Date;
}

/** The kept certificate, as long as it holds for every name and a month more; else a new one of the same key. */
export function ownCertificate({ folder, hosts, now }: Wanted): Certificate {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const keyFile = join(folder, "lan-key.pem");
  const certificateFile = join(folder, "lan-certificate.pem");
  if (!existsSync(keyFile)) {
    const { privateKey } = generateKeyPairSync("rsa", { modulusLength: 2048 });
    writeFileSync(keyFile, privateKey.export({ type: "pkcs1", format: "pem" }), { mode: 0o600 });
  }
  const key = readFileSync(keyFile, "utf8");
  const kept = existsSync(certificateFile) ? readFileSync(certificateFile, "utf8") : undefined;
  if (kept !== undefined && holds(new X509Certificate(kept), { hosts, now })) return told(key, kept);
  const made = selfSigned(key, { hosts, now });
  writeFileSync(certificateFile, made);
  return told(key, made);
}

/** A certificate of the reader's own, in PEM, with its key. */
export function givenCertificate(files: {
  readonly certificate: string;
  readonly key: string;
}): FoundCertificate {
  const texts: Record<string, string> = {};
  for (const [name, file] of Object.entries(files)) {
    try {
      texts[name] = readFileSync(file, "utf8");
    } catch {
      return { ok: false, says: message("page.server.no-pem", { file }) };
    }
  }
  const { key = "", certificate = "" } = texts;
  try {
    if (!new X509Certificate(certificate).checkPrivateKey(createPrivateKey(key))) {
      return { ok: false, says: message("page.server.other-key", { file: files.key }) };
    }
    return { ok: true, ...told(key, certificate) };
  } catch {
    return { ok: false, says: message("page.server.bad-pem", { files: [files.certificate, files.key] }) };
  }
}

function told(key: string, certificate: string): Certificate {
  return { key, certificate, fingerprint: new X509Certificate(certificate).fingerprint256 };
}

function holds(
  certificate: X509Certificate,
  { hosts, now }: { hosts: readonly string[]; now: Date },
): boolean {
  const enough = Date.parse(certificate.validTo) > now.getTime() + DAYS_LEFT * DAY_MS;
  return (
    enough && hosts.every((host) => certificate[isIP(host) > 0 ? "checkIP" : "checkHost"](host) !== undefined)
  );
}

/** Source of the fields: RFC 5280 4.2.1 (basic constraints, key usage, subject alternative names), RFC 9525 6 (no names in the subject). */
function selfSigned(key: string, { hosts, now }: { hosts: readonly string[]; now: Date }): string {
  const { pki } = forge;
  const privateKey = pki.privateKeyFromPem(key);
  const certificate = pki.createCertificate();
  certificate.publicKey = pki.setRsaPublicKey(privateKey.n, privateKey.e);
  // A number must be positive, and no other one of ours.
  certificate.serialNumber = `01${randomBytes(15).toString("hex")}`;
  // A clock that is slow on a phone must not make it a certificate of tomorrow.
  certificate.validity.notBefore = new Date(now.getTime() - DAY_MS);
  certificate.validity.notAfter = new Date(now.getTime() + DAYS * DAY_MS);
  const subject = [{ name: "commonName", value: "Outerleaf" }];
  certificate.setSubject(subject);
  certificate.setIssuer(subject);
  certificate.setExtensions([
    { name: "basicConstraints", cA: false, critical: true },
    { name: "keyUsage", digitalSignature: true, keyEncipherment: true, critical: true },
    { name: "extKeyUsage", serverAuth: true },
    {
      name: "subjectAltName",
      altNames: hosts.map((host) => (isIP(host) > 0 ? { type: 7, ip: host } : { type: 2, value: host })),
    },
  ]);
  certificate.sign(privateKey, forge.md.sha256.create());
  return pki.certificateToPem(certificate);
}
