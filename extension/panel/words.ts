import { config } from "@vscode/l10n";

/** The words of the interface in the reader's language, as the extension wrote them into the page; English without. */
const { words } = document.getElementById("panel")!.dataset;
if (words !== undefined) config({ contents: words });
