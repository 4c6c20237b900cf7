// What the library below stands on wants it first.
import "reflect-metadata";
import { webcrypto } from "node:crypto";
import { BlockList, isIP } from "node:net";
import { AsnConvert } from "@peculiar/asn1-schema";
import { GeneralName, GeneralSubtree, GeneralSubtrees, id_ce_nameConstraints, NameConstraints } from "@peculiar/asn1-x509";
import * as x509 from "@peculiar/x509";

/** What is made: PEM texts. */
export interface Made {
  readonly certificate: string;
  readonly key: string;
}

const DAY_MS = 86_400_000;
const AUTHORITY_DAYS = 3650;
/** Browsers and Apple's systems take no more of a server's certificate: 398 days. */
const SERVER_DAYS = 397;
/** Clocks of tablets are not always right. */
const EARLIER_MS = DAY_MS;

const EC = { name: "ECDSA", namedCurve: "P-256" } as const;
const SIGNED = { name: "ECDSA", hash: "SHA-256" } as const;

/** Names that an authority of a shop may vouch for: those set aside for networks at home (RFC 8375), and the addresses set aside (RFC 1918). */
const OWN_NAMES = "home.arpa";
const OWN_NETWORKS = ["10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16"];

const ownNetworks = new BlockList();
for (const network of OWN_NETWORKS) {
  const [address, bits] = network.split("/");
  ownNetworks.addSubnet(address, Number(bits));
}

x509.cryptoProvider.set(webcrypto as never);

/** An authority for the shop's own machines, that can never vouch for a name outside (RFC 5280, 4.2.1.10). */
export async function makeAuthority(now: number): Promise<Made> {
  const keys = await newKeys();
  const certificate = await x509.X509CertificateGenerator.createSelfSigned({
    name: "CN=Gritwright in this shop",
    keys,
    signingAlgorithm: SIGNED,
    notBefore: new Date(now - EARLIER_MS),
    notAfter: new Date(now + AUTHORITY_DAYS * DAY_MS),
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
      ownNamesOnly(),
    ],
  });
  return { certificate: `${certificate.toString("pem")}\n`, key: await pemOf(keys.privateKey) };
}

/** A certificate of a server for these names and addresses, signed by the authority. */
export async function makeServerCertificate(authority: Made, names: readonly string[], now: number): Promise<Made> {
  const keys = await newKeys();
  const issuer = new x509.X509Certificate(authority.certificate);
  const [block] = x509.PemConverter.decode(authority.key);
  const signingKey = await webcrypto.subtle.importKey("pkcs8", block, EC, false, ["sign"]);
  const certificate = await x509.X509CertificateGenerator.create({
    subject: new x509.Name([{ CN: [names[0]] }]),
    issuer: issuer.subjectName,
    publicKey: keys.publicKey,
    signingKey: signingKey as never,
    signingAlgorithm: SIGNED,
    notBefore: new Date(now - EARLIER_MS),
    notAfter: new Date(now + SERVER_DAYS * DAY_MS),
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension(names.map((value) => ({ type: isIP(value) === 0 ? "dns" : "ip", value }))),
      await x509.AuthorityKeyIdentifierExtension.create(issuer.publicKey),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  return { certificate: `${certificate.toString("pem")}\n`, key: await pemOf(keys.privateKey) };
}

/** Whether the authority may vouch for it. */
export function isOwnName(name: string): boolean {
  if (isIP(name) === 4) return ownNetworks.check(name);
  return isIP(name) === 0 && /^(?:[a-z0-9](?:[a-z0-9-]*[a-z0-9])?\.)+home\.arpa$/.test(name);
}

function ownNamesOnly(): x509.Extension {
  const permitted = [new GeneralName({ dNSName: OWN_NAMES }), ...OWN_NETWORKS.map((iPAddress) => new GeneralName({ iPAddress }))].map(
    (base) => new GeneralSubtree({ base }),
  );
  const constraints = new NameConstraints({ permittedSubtrees: new GeneralSubtrees(permitted) });
  return new x509.Extension(id_ce_nameConstraints, true, AsnConvert.serialize(constraints));
}

async function newKeys() {
  return (await webcrypto.subtle.generateKey(EC, true, ["sign", "verify"])) as webcrypto.CryptoKeyPair;
}

async function pemOf(key: webcrypto.CryptoKey): Promise<string> {
  const bytes = await webcrypto.subtle.exportKey("pkcs8", key);
  return `${x509.PemConverter.encode(bytes, "PRIVATE KEY")}\n`;
}
