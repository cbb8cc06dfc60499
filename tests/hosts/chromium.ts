import { existsSync } from "node:fs";
import { type Browser, chromium } from "playwright-core";
import { onPath } from "../../extension/start/programs.js";

/** The browser that drives the hosts; undefined where none is installed. */
export function findChromium(): string | undefined {
  const named = process.env.SUNWRIGHT_CHROMIUM;
  if (named) return existsSync(named) ? named : undefined;
  return ["chromium", "chromium-browser"].map(onPath).find(Boolean);
}

/** Starts the browser without a window, and with no way to anything but this machine. */
export async function startChromium(executablePath: string): Promise<Browser> {
  return chromium.launch({
    executablePath,
    headless: true,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--disable-dev-shm-usage",
      "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost, EXCLUDE *.localhost",
    ],
  });
}
