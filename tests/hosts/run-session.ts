import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { runTests } from "@vscode/test-electron";
import { diagnosticsFile, resultsFile, type TestResult } from "../editor/results.js";
import { bundleTests } from "./bundle.js";
import { installIntoDesktop } from "./desktop-host.js";
import { translateVsix } from "./language.js";
import { type Session, type SessionSort, sorts } from "./sessions.js";
import { servedFolder } from "./web-host.js";
import { layWorkspace } from "./workspace.js";

const launcher = join(dirname(fileURLToPath(import.meta.url)), "launch.sh");

export type HostName = "desktop" | "node" | "web";

export interface SessionRun {
  readonly host: HostName;
  readonly session: Session;
  readonly results: readonly TestResult[];
  /** Why there are no results, or not all. */
  readonly failure?: string;
  readonly seconds: number;
  /** What the editor showed of the examples, as the tests wrote it down. */
  readonly diagnostics?: string;
}

export interface RunOptions {
  readonly vsix: string;
  /** Folder for pictures of the windows. */
  readonly pictures: string;
  /** Program of the desktop's VS Code; the other hosts are driven by our launcher. */
  readonly desktop?: string | undefined;
  /** Only the test files of these names, without their ending, with commas between them. */
  readonly only?: string | undefined;
}

/** Runs the tests of one session in one host, on a workspace of its own with the packaged extension. */
export async function runSession(
  host: HostName,
  session: Session,
  { vsix, pictures, desktop, only }: RunOptions,
): Promise<SessionRun> {
  const temporary = mkdtempSync(join(tmpdir(), "sunwright-host-"));
  const started = performance.now();
  const workspace = join(temporary, "workspace");
  const sort: SessionSort = sorts[session];
  let failure: string | undefined;
  try {
    const opened = layWorkspace(sort, workspace);
    const place = host === "web" ? servedFolder : pathToFileURL(workspace).toString();
    await bundleTests(session, join(temporary, "tests"), place, only);
    const { language } = sort;
    const packaged = language ? join(temporary, "translated.vsix") : vsix;
    if (language) translateVsix(vsix, language, packaged);
    await runTests({
      vscodeExecutablePath: desktop ?? launcher,
      extensionDevelopmentPath: emptyExtension(join(temporary, "development")),
      extensionTestsPath: join(temporary, "tests"),
      launchArgs: [...(opened ? [opened] : []), ...(desktop ? installIntoDesktop(desktop, packaged, temporary) : [])],
      reuseMachineInstall: true,
      extensionTestsEnv: {
        SUNWRIGHT_HOST: host,
        SUNWRIGHT_VSIX: packaged,
        SUNWRIGHT_TEMPORARY: temporary,
        SUNWRIGHT_PICTURES: join(pictures, host),
        SUNWRIGHT_FOLDER: workspace,
        ...(language ? { SUNWRIGHT_LANGUAGE: language } : {}),
        SUNWRIGHT_TRUST: sort.isTrusted ? "yes" : "no",
      },
    });
  } catch (error) {
    failure = error instanceof Error ? error.message : String(error);
  }
  const read = (name: string) => {
    const file = join(workspace, name);
    return existsSync(file) ? readFileSync(file, "utf8") : undefined;
  };
  const results: TestResult[] = JSON.parse(read(resultsFile) ?? "[]");
  const diagnostics = read(diagnosticsFile);
  rmSync(temporary, { recursive: true, force: true });
  const seconds = Math.round((performance.now() - started) / 100) / 10;
  return { host, session, results, seconds, ...(failure ? { failure } : {}), ...(diagnostics ? { diagnostics } : {}) };
}

/** Tests run only where some extension is under development; ours is installed, so this one is empty. */
function emptyExtension(folder: string): string {
  mkdirSync(folder, { recursive: true });
  const manifest = { name: "empty", publisher: "sunwright", version: "1.0.0", engines: { vscode: "^1.91.0" } };
  writeFileSync(join(folder, "package.json"), JSON.stringify(manifest));
  return folder;
}
