import { rmSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { findChromium, startChromium } from "./chromium.js";
import { handsOf } from "./hands.js";
import type { Host, HostOptions } from "./host.js";
import { startNodeHost } from "./node-host.js";
import { openStage, stageFile } from "./stage.js";
import { startWebHost } from "./web-host.js";
import { windowSize } from "./window-hands.js";

/**
 * Stands in for VS Code's program: takes its words, opens the workspace in a host in the browser, has the tests run there
 * and ends with their exit code. What the words cannot say comes in the environment.
 */
async function launch(words: readonly string[]): Promise<number> {
  const { SUNWRIGHT_HOST, SUNWRIGHT_VSIX, SUNWRIGHT_TEMPORARY, SUNWRIGHT_PICTURES } = process.env;
  const { SUNWRIGHT_TRUST, SUNWRIGHT_FOLDER, SUNWRIGHT_LANGUAGE: language } = process.env;
  const value = (name: string) => words.find((word) => word.startsWith(`--${name}=`))?.slice(name.length + 3) ?? "";
  const opened = words.find((word) => !word.startsWith("--"));
  const folder = SUNWRIGHT_FOLDER!;
  const options: HostOptions = {
    folder,
    ...(opened === undefined ? {} : { opened: relative(folder, opened) }),
    tests: value("extensionTestsPath"),
    development: value("extensionDevelopmentPath"),
    vsix: SUNWRIGHT_VSIX!,
    temporary: SUNWRIGHT_TEMPORARY!,
    isTrusted: SUNWRIGHT_TRUST !== "no",
    ...(language ? { language } : {}),
  };
  const executable = findChromium();
  if (!executable) throw new Error("There is no Chromium");

  let host: Host | undefined;
  const browser = await startChromium(executable);
  const stop = async () => {
    await browser.close();
    await host?.stop();
  };
  for (const signal of ["SIGINT", "SIGTERM"] as const)
    process.once(signal, () => void stop().then(() => process.exit(1)));
  try {
    host = await (SUNWRIGHT_HOST === "web" ? startWebHost(options) : startNodeHost(options));
    const page = await browser.newPage({ viewport: windowSize, ...(language ? { locale: language } : {}) });
    // What is sent into the page was compiled with calls to this.
    await page.addInitScript("globalThis.__name = (named) => named");
    // Where an editor has words of its own in a language, they say so; the server here comes without.
    if (language) await page.addInitScript(`globalThis._VSCODE_NLS_LANGUAGE = ${JSON.stringify(language)}`);
    const pictures = SUNWRIGHT_PICTURES!;
    const stage = await openStage(handsOf({ host, browser, page, pictures, folder }));
    writeFileSync(join(folder, stageFile), JSON.stringify({ address: stage.address, host: SUNWRIGHT_HOST }));
    page.on("pageerror", (error) => console.log(`page: ${error.message}`));
    if (process.env.SUNWRIGHT_VERBOSE) page.on("console", (message) => console.log(`page: ${message.text()}`));
    const code = await new Promise<number>((resolve, reject) => {
      const tooLong = setTimeout(
        () => reject(new Error("The tests did not end in time")),
        Number(process.env.SUNWRIGHT_PATIENCE ?? 1_200_000),
      );
      page
        .exposeFunction("codeAutomationExit", (exit: number) => {
          clearTimeout(tooLong);
          resolve(exit);
        })
        .then(() => page.exposeFunction("codeAutomationLog", (type: string, args: unknown[]) => log(type, args)))
        .then(() => page.goto(host!.testing))
        .catch(reject);
    }).catch(async (error: unknown) => {
      await page.screenshot({ path: join(pictures, "stuck.png") }).catch(() => {});
      throw error;
    });
    stage.server.close();
    stage.server.closeAllConnections();
    return code;
  } finally {
    await stop();
    rmSync(join(folder, stageFile), { force: true });
  }
}

function log(type: string, args: unknown[]): void {
  // The host says at length that its own native modules were not built, and has no worker for pages without a network, nor
  // a gallery to look for words of its own in.
  const isExpected = args.some((arg) =>
    /spdlog|native-watchdog|extension gallery|\[Service Worker\]/.test(String(arg)),
  );
  if ((type === "error" && !isExpected) || process.env.SUNWRIGHT_VERBOSE) console.log(...args);
}

launch(process.argv.slice(2)).then(
  (code) => process.exit(code),
  (error: unknown) => {
    console.error(error);
    process.exit(1);
  },
);
