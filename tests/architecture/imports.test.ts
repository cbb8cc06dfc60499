import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { describe, expect, test } from "vitest";

const source = resolve("language-server/src");

/** What those may import that show a design in one way or another. */
const views = [
  "place",
  "design",
  "circuit",
  "physics",
  "rules",
  "assessment",
  "isolation",
  "drawing",
  "language",
  "format",
  "reference",
];

/** For each room: the rooms it may import. One direction of flow; DEVELOPERS.md draws it. */
const allowed: Record<string, readonly string[]> = {
  physics: ["place"],
  design: ["place", "physics"],
  circuit: ["place", "design", "physics"],
  rules: ["place", "design", "circuit", "physics"],
  assessment: ["place", "design", "circuit", "physics", "rules"],
  isolation: ["place", "design", "circuit", "physics", "rules", "assessment"],
  drawing: ["place", "design", "circuit", "physics", "rules", "assessment"],
  "drawing-worker": ["drawing"],
  reference: ["place", "design", "physics", "rules", "assessment"],
  language: ["place", "design", "physics", "assessment"],
  format: ["place", "design", "language"],
  editor: views,
  server: ["place", "editor", "language"],
  cli: views,
};

/** Rooms whose code must run anywhere: no Node, no parser, no protocol. */
const core = ["physics", "design", "circuit", "rules", "assessment", "isolation", "drawing", "reference"];

/** What rooms of the core may import from outside: it runs anywhere too. */
const libraries: Record<string, RegExp> = { drawing: /^(elkjs\/lib\/elk-api\.js|pdfkit|@fontsource\/.*\.woff)$/ };

interface Import {
  readonly file: string;
  readonly room: string;
  readonly what: string;
}

function* imports(): Generator<Import> {
  for (const entry of readdirSync(source, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !entry.name.endsWith(".ts")) continue;
    const file = join(entry.parentPath, entry.name);
    const room = roomOf(file);
    for (const [, what = ""] of readFileSync(file, "utf8").matchAll(/^(?:import|export)[^;]*?from "([^"]+)";/gms))
      yield { file, room, what };
  }
}

/** The folder below the sources; for a file that lies in none, its own name. */
function roomOf(file: string): string {
  return (relative(source, file).split(/[\\/]/)[0] ?? "").replace(/\.[jt]s$/, "");
}

const all = [...imports()];

describe("imports go one way", () => {
  test("the sources were found", () => {
    expect(all.length).toBeGreaterThan(100);
  });

  test.each(Object.keys(allowed))("%s knows only the rooms before it", (room) => {
    const wrong = all
      .filter((entry) => entry.room === room && entry.what.startsWith("."))
      .map((entry) => ({ ...entry, to: roomOf(resolve(dirname(entry.file), entry.what)) }))
      .filter(({ to }) => to !== room && !allowed[room]?.includes(to))
      .map(({ file, to }) => `${relative(source, file)} imports ${to}`);
    expect(wrong).toEqual([]);
  });

  test.each(core)("%s runs anywhere: it imports the grammar's plain tables and nothing else from outside", (room) => {
    const outside = all
      .filter((entry) => entry.room === room && !entry.what.startsWith(".") && entry.what !== "@sunwright/grammar")
      .filter(({ what }) => !libraries[room]?.test(what))
      .map(({ file, what }) => `${relative(source, file)} imports ${what}`);
    expect(outside).toEqual([]);
  });

  test("every room is in the picture", () => {
    expect([...new Set(all.map(({ room }) => room))].filter((room) => !(room in allowed) && room !== "place")).toEqual(
      [],
    );
  });
});
