import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const ours = join(dirname(fileURLToPath(import.meta.url)), "..", "LICENSE");

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly author?: string | { readonly name: string };
}

const heading = `Third-party notices

Sunwright's bundles contain the packages below, each under its own licence. This file is made when they are built.
`;

/**
 * The licences of every package of which something went into a bundle. Takes the files that were bundled, as absolute
 * paths; throws an Error for a package whose licence has no text.
 */
export function thirdPartyNotices(files: Iterable<string>): string {
  const folders = new Set<string>();
  for (const file of files) {
    const folder = packageFolder(file);
    if (folder) folders.add(folder);
  }
  const sections = [...folders].flatMap((folder) => {
    const manifest: Manifest = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
    const { name, version, license } = manifest;
    if (name.startsWith("@sunwright/")) return [];
    const own = licenceText(folder);
    const title = `${name} ${version} (${license ?? "licence below"})`;
    const text = own ?? usualText(manifest);
    return [{ name, text: `${"-".repeat(80)}\n${title}\n\n${text}` }];
  });
  sections.sort((a, b) => (a.name < b.name ? -1 : 1));
  return [heading, ...sections.map(({ text }) => text)].join("\n");
}

function packageFolder(file: string): string | undefined {
  if (!file.split(/[\\/]/).includes("node_modules")) return undefined;
  for (let folder = dirname(file); folder !== dirname(folder); folder = dirname(folder)) {
    const manifest = join(folder, "package.json");
    // Some packages mark their own folders with a manifest that only says what sort of modules lie there.
    if (existsSync(manifest) && JSON.parse(readFileSync(manifest, "utf8")).version) return folder;
  }
  return undefined;
}

/** Some packages name the MIT licence without its text, which asks to be handed on: the words are those of our own. */
function usualText({ name, license, author }: Manifest): string {
  const holder = typeof author === "object" ? author.name : author?.replace(/\s*<.*/, "");
  if (license !== "MIT" || !holder) throw new Error(`${name} carries no text of its licence: it cannot be shipped`);
  return readFileSync(ours, "utf8").replace(/^Copyright .*$/m, `Copyright (c) ${holder}`);
}

function licenceText(folder: string): string | undefined {
  const name = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
  return name && `${readFileSync(join(folder, name), "utf8").trim()}\n`;
}
