import { X509Certificate } from "node:crypto";
import { once } from "node:events";
import { mkdtempSync, readFileSync, renameSync, rmSync, statSync } from "node:fs";
import { createServer, get } from "node:https";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { certificateHere } from "#server/certificate/certificateHere";
import { isOwnName, type Made, makeAuthority, makeServerCertificate } from "#server/certificate/makeCertificate";

const NOW = Date.now();
const DAY = 86_400_000;
const folder = mkdtempSync(join(tmpdir(), "gritwright-certificate-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let authority: Made;
let server: Made;
beforeAll(async () => {
  authority = await makeAuthority(NOW);
  server = await makeServerCertificate(authority, ["shop.home.arpa", "192.168.1.20"], NOW);
});

/** What Node's TLS (OpenSSL) says of a server that is asked by a name. */
async function askedBy(name: string, { certificate, key }: Made, trusted: Made): Promise<string> {
  const listening = createServer({ cert: certificate, key }, (_, response) => response.end("well")).listen(0, "127.0.0.1");
  await once(listening, "listening");
  const { port } = listening.address() as AddressInfo;
  try {
    return await new Promise((resolve) => {
      const options = {
        host: "127.0.0.1",
        port,
        servername: /^[\d.]+$/.test(name) ? "" : name,
        ca: trusted.certificate,
        headers: { host: name },
      };
      get(options, (response) => {
        response.resume();
        resolve("well");
      }).on("error", (error: NodeJS.ErrnoException) =>
        resolve(error.code === undefined || error.code === "UNSPECIFIED" ? error.message : error.code),
      );
    });
  } finally {
    listening.closeAllConnections();
    listening.close();
  }
}

describe("a certificate for the shop's network", () => {
  test("is taken by whoever trusts the authority, by its name, and by nobody else", async () => {
    expect(await askedBy("shop.home.arpa", server, authority)).toBe("well");
    expect(await askedBy("other.home.arpa", server, authority)).toBe("ERR_TLS_CERT_ALTNAME_INVALID");
    expect(await askedBy("shop.home.arpa", server, await makeAuthority(NOW))).toBe("UNABLE_TO_VERIFY_LEAF_SIGNATURE");
  });

  test("names its addresses, is a server's, and good for no longer than browsers take", () => {
    const read = new X509Certificate(server.certificate);
    expect(read.subjectAltName).toBe("DNS:shop.home.arpa, IP Address:192.168.1.20");
    expect(read.checkIP("192.168.1.20")).toBe("192.168.1.20");
    expect(read.checkIssued(new X509Certificate(authority.certificate))).toBe(true);
    expect(read.ca).toBe(false);
    expect(read.keyUsage).toEqual(["1.3.6.1.5.5.7.3.1"]);
    // Apple, "About upcoming limits on trusted certificates": at most 398 days.
    expect(Date.parse(read.validTo) - Date.parse(read.validFrom)).toBeLessThanOrEqual(398 * DAY);
    expect(Date.parse(read.validFrom)).toBeLessThan(NOW);
  });

  test("an authority vouches for no name outside: OpenSSL refuses what it signs all the same", async () => {
    const foreign = await makeServerCertificate(authority, ["www.example.com"], NOW);
    expect(await askedBy("www.example.com", foreign, authority)).toBe("permitted subtree violation");
    const address = await makeServerCertificate(authority, ["shop.home.arpa", "8.8.8.8"], NOW);
    expect(await askedBy("shop.home.arpa", address, authority)).toBe("permitted subtree violation");
  });

  test.each([
    ["shop.home.arpa", true],
    ["a.b.home.arpa", true],
    ["home.arpa", false],
    ["shop.home.arpa.example.com", false],
    ["shop.local", false],
    ["10.0.0.1", true],
    ["172.31.255.1", true],
    ["172.32.0.1", false],
    ["192.168.1.20", true],
    ["192.169.1.20", false],
    ["-x.home.arpa", false],
  ])("%s is a name of one's own: %s", (name, isOwn) => {
    expect(isOwnName(name)).toBe(isOwn);
  });
});

describe("gritwright certificate", () => {
  const place = join(folder, "keys");
  const text = (name: string) => readFileSync(join(place, name), "utf8");

  test("makes an authority once, and signs with it the next time", async () => {
    expect(await certificateHere([place, "--name", "shop.home.arpa"], NOW)).toBe(0);
    const [first, signed] = [text("authority.pem"), text("cert.pem")];
    if (process.platform !== "win32") expect(statSync(join(place, "key.pem")).mode & 0o077).toBe(0);
    expect(await certificateHere([place, "--name", "shop.home.arpa"], NOW)).toBe(0);
    expect(text("authority.pem")).toBe(first);
    expect(text("cert.pem")).not.toBe(signed);
    expect(await askedBy("shop.home.arpa", { certificate: text("cert.pem"), key: text("key.pem") }, { certificate: first, key: "" })).toBe(
      "well",
    );
  });

  test("wants the authority's key beside it, and leaves all as it is without", async () => {
    renameSync(join(place, "authority-key.pem"), join(folder, "stick.pem"));
    const before = text("cert.pem");
    expect(await certificateHere([place, "--name", "shop.home.arpa"], NOW)).toBe(2);
    expect(text("cert.pem")).toBe(before);
  });

  test.each([[[]], [["x"]], [["x", "--name", "www.example.com"]], [["x", "--nmae", "shop.home.arpa"]]])("refuses %j", async (args) => {
    expect(await certificateHere(args, NOW)).toBe(2);
  });
});
