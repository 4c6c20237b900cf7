import { existsSync } from "node:fs";
import { defineConfig } from "@playwright/test";

const PORT = Number(process.env.GRITWRIGHT_TEST_PORT ?? 4799);
/** Two cores is what a build machine has. */
const WORKERS = 2;
const SYSTEM_BROWSERS = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
const browser = process.env.CHROMIUM ?? SYSTEM_BROWSERS.find((path) => existsSync(path));

export default defineConfig({
  testDir: "test/browser",
  outputDir: "dist/.browser-tests",
  // Each worker has a server and a shop of its own: what one test writes is not in another's way.
  workers: WORKERS,
  timeout: 60_000,
  // What holds only when tried again is named at the end of the run.
  retries: 1,
  expect: { timeout: 20_000 },
  reporter: "list",
  use: {
    baseURL: addressOf(Number(process.env.TEST_PARALLEL_INDEX ?? 0)),
    launchOptions: {
      ...(browser === undefined ? {} : { executablePath: browser }),
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
  },
  webServer: Array.from({ length: WORKERS }, (_, index) => ({
    command: `node tools/browserServer.mjs ${PORT + index} dist/.browser-shops/${process.pid}-${index}`,
    url: `${addressOf(index)}/plan`,
    reuseExistingServer: false,
  })),
});

function addressOf(index: number): string {
  return `http://127.0.0.1:${PORT + index}`;
}
