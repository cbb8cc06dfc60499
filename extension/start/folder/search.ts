import { type CancellationToken, type Disposable, type Progress, Range, type Uri, workspace } from "vscode";
import type { HttpFolder } from "./http-folder";

/** The part of the editor's interface for searches that is used here; it is not among its settled types yet. */
interface SearchInterface {
  registerFileSearchProvider(
    scheme: string,
    provider: { provideFileSearchResults(query: unknown, options: { folder: Uri }): Promise<Uri[]> },
  ): Disposable;
  registerTextSearchProvider(scheme: string, provider: TextSearcher): Disposable;
}

interface TextQuery {
  readonly pattern: string;
  readonly isRegExp?: boolean;
  readonly isCaseSensitive?: boolean;
  readonly isWordMatch?: boolean;
}

interface TextMatch {
  readonly uri: Uri;
  readonly ranges: Range[];
  readonly preview: { readonly text: string; readonly matches: Range[] };
}

interface TextSearcher {
  provideTextSearchResults(
    query: TextQuery,
    options: { folder: Uri; maxResults: number },
    progress: Progress<TextMatch>,
    token: CancellationToken,
  ): Promise<{ limitHit: boolean }>;
}

/** Finds files by name and words in them; the editor has neither for folders that are on no disk of its own. */
export function registerSearch(scheme: string, folder: HttpFolder): Disposable[] {
  const searches = workspace as unknown as SearchInterface;
  return [
    searches.registerFileSearchProvider(scheme, {
      provideFileSearchResults: (_query, options) => folder.filesBelow(options.folder),
    }),
    searches.registerTextSearchProvider(scheme, {
      provideTextSearchResults: async (query, options, progress, token) => {
        let left = options.maxResults;
        for (const uri of await folder.filesBelow(options.folder)) {
          if (token.isCancellationRequested) break;
          const text = new TextDecoder().decode(await folder.readFile(uri));
          for (const match of matches(uri, text, expression(query))) {
            if (left-- <= 0) return { limitHit: true };
            progress.report(match);
          }
        }
        return { limitHit: false };
      },
    }),
  ];
}

function expression({ pattern, isRegExp, isCaseSensitive, isWordMatch }: TextQuery): RegExp {
  const source = isRegExp ? pattern : pattern.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
  return new RegExp(isWordMatch ? `\\b(?:${source})\\b` : source, isCaseSensitive ? "gu" : "giu");
}

/** One match a line, with every place in it. */
function* matches(uri: Uri, text: string, sought: RegExp): Iterable<TextMatch> {
  for (const [number, line] of text.split(/\r?\n/).entries()) {
    const found = [...line.matchAll(sought)].filter(([word]) => word !== "");
    if (found.length === 0) continue;
    const at = (row: number) => found.map(({ index, 0: word }) => new Range(row, index, row, index + word.length));
    yield { uri, ranges: at(number), preview: { text: line, matches: at(0) } };
  }
}
