import { existsSync } from "node:fs";
import { defineConfig } from "@playwright/test";

const PORT = Number(process.env.GRITWRIGHT_TEST_PORT ?? 4799);
const SYSTEM_BROWSERS = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
const browser = process.env.CHROMIUM ?? SYSTEM_BROWSERS.find((path) => existsSync(path));

export default defineConfig({
  testDir: "test/browser",
  outputDir: "dist/.browser-tests",
  // Each test computes a plan with two workers: several at once would only measure each other.
  workers: 1,
  timeout: 60_000,
  expect: { timeout: 20_000 },
  reporter: "list",
  use: {
    baseURL: `http://127.0.0.1:${PORT}`,
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
  webServer: {
    command: `node dist/server/main.js --no-open --port ${PORT} --data dist/.browser-shops/${process.pid}`,
    url: `http://127.0.0.1:${PORT}/plan`,
    reuseExistingServer: false,
  },
});
