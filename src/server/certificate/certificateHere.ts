import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { isOwnName, type Made, makeAuthority, makeServerCertificate } from "./makeCertificate.ts";

const USAGE = "gritwright certificate FOLDER --name NAME.home.arpa [--name ADDRESS]…";
const OWNER_ONLY = 0o600;

class NoCertificate extends Error {}

/**
 * `gritwright certificate FOLDER --name NAME…`: a certificate for the shop's network, and the authority that tablets are told to trust. Where the folder has
 * an authority already, it signs the new certificate, and the tablets need nothing new.
 */
export async function certificateHere(args: readonly string[], now: number): Promise<0 | 1 | 2> {
  try {
    const { folder, names } = asked(args);
    const { wasThere } = await made(folder, names, now);
    console.log(
      [
        wasThere
          ? `The authority in ${folder} has signed a new certificate; the tablets need nothing new.`
          : `An authority and a certificate lie in ${folder}.`,
        `  gritwright serve --own --address 0.0.0.0 --cert ${join(folder, "cert.pem")} --key ${join(folder, "key.pem")} ${names.map((name) => `--name ${name}`).join(" ")}`,
        `Put ${join(folder, "authority.pem")} on each tablet and trust it there. Keep authority-key.pem off this machine, on a stick in a drawer: whoever has it can make certificates that your tablets believe.`,
        "The certificate is good for 13 months: do this once a year, with authority.pem and authority-key.pem in the folder, and start the server again.",
      ].join("\n"),
    );
    return 0;
  } catch (error) {
    console.error(
      error instanceof NoCertificate
        ? error.message
        : `The certificate could not be made: ${error instanceof Error ? error.message : error}`,
    );
    return error instanceof NoCertificate ? 2 : 1;
  }
}

function asked(args: readonly string[]): { folder: string; names: string[] } {
  const { values, positionals } = parsed(args);
  const [folder, ...others] = positionals;
  const names = (values.name ?? []).map((name) => name.toLowerCase());
  if (folder === undefined || others.length > 0 || names.length === 0)
    throw new NoCertificate(`Which folder, and by which names is the server opened? ${USAGE}`);
  const foreign = names.find((name) => !isOwnName(name));
  if (foreign !== undefined)
    throw new NoCertificate(
      `${foreign} is no name for a network of one's own. Use NAME.home.arpa (set aside for this), and addresses that begin with 10., 172.16. to 172.31. or 192.168.`,
    );
  return { folder, names };
}

function parsed(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: { name: { type: "string", multiple: true } }, allowPositionals: true });
  } catch (error) {
    throw new NoCertificate(`${error instanceof Error ? error.message : String(error)}. ${USAGE}`);
  }
}

async function made(folder: string, names: readonly string[], now: number): Promise<{ wasThere: boolean }> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const paths = { certificate: join(folder, "authority.pem"), key: join(folder, "authority-key.pem") };
  const isThere = existsSync(paths.certificate);
  if (isThere && !existsSync(paths.key))
    throw new NoCertificate(
      `${paths.certificate} is there, and its key is not: put authority-key.pem beside it for this, or choose another folder for a new authority.`,
    );
  const authority: Made = isThere
    ? { certificate: readFileSync(paths.certificate, "utf8"), key: readFileSync(paths.key, "utf8") }
    : await makeAuthority(now);
  const server = await makeServerCertificate(authority, names, now);
  if (!isThere) {
    writeFileSync(paths.key, authority.key, { mode: OWNER_ONLY });
    writeFileSync(paths.certificate, authority.certificate);
  }
  writeFileSync(join(folder, "key.pem"), server.key, { mode: OWNER_ONLY });
  writeFileSync(join(folder, "cert.pem"), server.certificate);
  return { wasThere: isThere };
}
