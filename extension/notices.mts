import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
}

const heading = `Third-party notices

Sunwright's bundles contain the packages below, each under its own licence. This file is made when they are built.
`;

/**
 * The licences of every package of which something went into a bundle. Takes the files that were bundled, as absolute
 * paths; throws an Error for a package that neither names a licence nor carries its text.
 */
export function thirdPartyNotices(files: Iterable<string>): string {
  const folders = new Set<string>();
  for (const file of files) {
    const folder = packageFolder(file);
    if (folder) folders.add(folder);
  }
  const sections = [...folders].flatMap((folder) => {
    const { name, version, license }: Manifest = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
    if (name.startsWith("@sunwright/")) return [];
    const own = licenceText(folder);
    if (!license && !own) throw new Error(`${name} names no licence: it cannot be shipped`);
    const title = `${name} ${version} (${license ?? "licence below"})`;
    const text = own ?? "The package carries no text of its licence.\n";
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

function licenceText(folder: string): string | undefined {
  const name = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
  return name && `${readFileSync(join(folder, name), "utf8").trim()}\n`;
}
