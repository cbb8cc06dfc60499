import { mkdirSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { dirname, join } from "node:path";
import type { Host, HostOptions } from "./host.js";
import { end, run, startUntil } from "./processes.js";
import { installedServer } from "./server-package.js";
import { windowSettings } from "./workspace.js";

/** A VS Code server: extensions run in Node beside the files, as on the desktop; the window is in a browser. */
export async function startNodeHost(options: HostOptions): Promise<Host> {
  const server = installedServer();
  if (!server) throw new Error("The VS Code server is not in the cache: npm run test:editor installs it");
  const data = join(options.temporary, "server");
  const extensions = join(options.temporary, "extensions");
  // No gallery of extensions: nothing is asked of any other machine.
  const env = { ...process.env, EXTENSIONS_GALLERY: "{}", PATH: `${dirname(server.node)}:${process.env.PATH}` };
  const common = ["--server-data-dir", data, "--extensions-dir", extensions, "--accept-server-license-terms"];
  const settings = join(data, "Machine", "settings.json");
  mkdirSync(dirname(settings), { recursive: true });
  writeFileSync(settings, JSON.stringify({ ...windowSettings, "telemetry.telemetryLevel": "off" }));
  const install = ["--install-extension", options.vsix, "--force", ...common, "--without-connection-token"];
  run(server.node, [server.main, ...install], { cwd: options.temporary, env });

  const port = await freePort();
  const words = [
    ...[server.main, "--host", "127.0.0.1", "--port", String(port), "--without-connection-token", ...common],
    ...["--user-data-dir", data, "--telemetry-level", "off", "--enable-smoke-test-driver"],
    ...(options.isTrusted ? ["--disable-workspace-trust"] : []),
  ];
  const child = await startUntil(server.node, words, {
    ready: /Extension host agent started/,
    env,
    cwd: options.temporary,
  });
  const remote = (path: string) => `vscode-remote://127.0.0.1:${port}${path}`;
  const opened = query(options);
  const payload = JSON.stringify([
    ["extensionDevelopmentPath", remote(options.development)],
    ["extensionTestsPath", remote(join(options.tests, "index.js"))],
  ]);
  const plain = `http://127.0.0.1:${port}/?${opened}`;
  return {
    plain,
    testing: `${plain}&payload=${encodeURIComponent(payload)}`,
    pid: child.pid!,
    stop: async () => end(child),
  };
}

/** What the window opens. */
function query({ folder, opened }: HostOptions): string {
  if (opened === undefined) return "ew=true";
  return `${opened === "" ? "folder" : "workspace"}=${encodeURIComponent(join(folder, opened))}`;
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as { port: number };
  await new Promise((resolve) => server.close(resolve));
  return port;
}
