import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Plugin } from "vite";

const PLACE = "__PAGE_FILES__";

/**
 * Tells the service worker which files the page has, and gives it a version that changes with any of them.
 *
 * @param publicFolder files that are taken over as they are
 */
export function serviceWorkerList(publicFolder: string): Plugin {
  return {
    name: "gritwright-service-worker-list",
    generateBundle: {
      order: "post",
      handler(_, bundle) {
        const worker = Object.values(bundle).find((file) => file.fileName === "sw.js");
        if (worker?.type !== "chunk") return;
        const digest = createHash("sha256");
        const taken = readdirSync(publicFolder).sort();
        for (const name of taken) digest.update(readFileSync(join(publicFolder, name)));
        const built = Object.values(bundle).filter((file) => file !== worker);
        for (const file of built) digest.update(file.type === "chunk" ? file.code : file.source);
        const files = [...built.map(({ fileName }) => fileName), ...taken].map((name) => `/${name}`).sort();
        const list = { version: digest.digest("hex").slice(0, 12), files };
        if (!worker.code.includes(PLACE)) throw new Error(`The service worker has no ${PLACE}.`);
        worker.code = worker.code.replaceAll(PLACE, () => `(${JSON.stringify(list)})`);
      },
    },
  };
}
