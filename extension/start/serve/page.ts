/** What the page of the editor is told. Addresses are absolute; paths are below the folder that is served. */
export interface PageSettings {
  /** Origin and secret path under which everything is found, without a slash at the end. */
  readonly base: string;
  /** Scheme of the folder's files. */
  readonly scheme: string;
  /** Path of the workspace: a folder, or a `.code-workspace` file; nothing is open without one. */
  readonly workspace: string | undefined;
  readonly extensions: readonly string[];
  /** The extension that reaches the folder's files. */
  readonly folder: string;
  readonly isTrusted: boolean;
  /** In which extensions speak, where they can; the editor itself has English words only. */
  readonly language?: string;
  /** Files to open at the start, by path. */
  readonly open: readonly string[];
  /** The module that runs tests in the extension host, where it is to run some. */
  readonly tests?: string;
  readonly settings?: Readonly<Record<string, unknown>>;
}

const quiet = {
  "telemetry.telemetryLevel": "off",
  "workbench.enableExperiments": false,
  "workbench.startupEditor": "none",
  "workbench.tips.enabled": false,
  "extensions.ignoreRecommendations": true,
  "git.enabled": false,
};

/** The page that starts a VS Code in the browser from its static files. */
export function page(settings: PageSettings): string {
  const { base, tests } = settings;
  const options = {
    ...settings,
    configurationDefaults: { ...quiet, ...settings.settings },
    isTested: tests !== undefined,
  };
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>Sunwright</title>
<meta name="viewport" content="width=device-width, initial-scale=1.0">
<link rel="icon" href="${base}/extension/0/icons/sunwright.png" type="image/png">
<link data-name="vs/workbench/workbench.web.main" rel="stylesheet" href="${base}/code/out/vs/workbench/workbench.web.main.css">
</head>
<body aria-label="">
<script id="options" type="application/json">${JSON.stringify(options).replaceAll("<", "\\u003c")}</script>
<script src="${base}/code/out/vs/loader.js"></script>
<script src="${base}/code/out/vs/webPackagePaths.js"></script>
<script>${loading}</script>
<script src="${base}/code/out/vs/workbench/workbench.web.main.nls.js"></script>
<script src="${base}/code/out/vs/workbench/workbench.web.main.js"></script>
<script>${starting}</script>
</body>
</html>
`;
}

const loading = `
const options = JSON.parse(document.getElementById("options").textContent);
const paths = Object.fromEntries(
  Object.entries(self.webPackagePaths).map(([name, path]) => [name, options.base + "/code/node_modules/" + name + "/" + path]),
);
const availableLanguages = options.language ? { "*": options.language } : {};
require.config({ baseUrl: options.base + "/code/out", recordStats: true, paths, "vs/nls": { availableLanguages } });
`;

const starting = `
require(["vs/workbench/workbench.web.main", "vs/base/common/uri"], ({ create }, { URI }) => {
  const file = (path) => URI.from({ scheme: options.scheme, path });
  const at = (address) => URI.parse(address);
  const place = (path) => (path.endsWith(".code-workspace") ? { workspaceUri: file(path) } : { folderUri: file(path) });
  const open = async (workspace) => {
    const chosen = workspace && (workspace.workspaceUri ?? workspace.folderUri);
    if (!chosen || chosen.scheme !== options.scheme) return false;
    location.search = "?workspace=" + encodeURIComponent(chosen.path);
    return true;
  };
  create(document.body, {
    additionalBuiltinExtensions: (options.tests ? options.extensions : [...options.extensions, options.folder]).map(at),
    configurationDefaults: options.configurationDefaults,
    enableWorkspaceTrust: !options.isTrusted,
    workspaceProvider: { workspace: options.workspace && place(options.workspace), trusted: options.isTrusted || undefined, open },
    defaultLayout: options.isTested ? undefined : { editors: options.open.map((path) => ({ uri: file(path) })) },
    // Tests run only where some extension is under development; ours is tested as it is installed.
    developmentOptions: options.tests
      ? { extensions: [at(options.folder)], extensionTestsPath: at(options.tests) }
      : undefined,
    productConfiguration: {
      nameShort: "Sunwright",
      nameLong: "Sunwright in VS Code",
      enableTelemetry: false,
      extensionEnabledApiProposals: { "sunwright.folder": ["fileSearchProvider", "textSearchProvider"] },
      webviewContentExternalBaseUrlTemplate: options.webviews,
    },
  });
});
`;
