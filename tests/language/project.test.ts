import { describe, expect, test } from "vitest";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { Project } from "../../language-server/src/language/project.js";
import { MemoryFiles } from "./memory-files.js";

const parser = createChunkParser();
const at = (name: string) => `file:///alder/${name}`;

async function load(
  files: Record<string, ConstructorParameters<typeof MemoryFiles>[0] extends Map<string, infer T> ? T : never>,
) {
  const memory = new MemoryFiles(new Map(Object.entries(files).map(([name, what]) => [`/alder/${name}`, what])));
  const project = new Project(() => parser);
  const found = await project.load(at("house.sun"), memory);
  return { project, memory, found };
}

function problems(project: Project, name: string) {
  return project.fragments(at(name)).flatMap((fragment) => fragment.problems);
}

describe("project", () => {
  test("a file is loaded with all that it uses, each once, in the order of the use lines", async () => {
    const { project, memory } = await load({
      "house.sun": 'use "parts/roof.sun"\nuse "parts/plant.sun"\n',
      "parts/roof.sun": 'use "../common.sun"\npart A is module',
      "parts/plant.sun": 'use "../common.sun"\n',
      "common.sun": "part B is cable\n",
    });
    expect(project.reach(at("house.sun"))).toEqual([
      at("house.sun"),
      at("parts/roof.sun"),
      at("parts/plant.sun"),
      at("common.sun"),
    ]);
    expect(project.usedBy(at("common.sun"))).toEqual([at("parts/roof.sun"), at("parts/plant.sun")]);
    expect(memory.reads).toBe(4);
    expect(problems(project, "house.sun")).toEqual([]);
  });

  test("a missing file is a problem at its use line, with a near path where one is known", async () => {
    const { project } = await load({ "house.sun": 'use "roof.sun"\nuse "parts/plant.sun"\n', "parts/plant.sun": "" });
    project.update(at("parts/roof.sun"), "part A is module\n");
    expect(problems(project, "house.sun")).toMatchObject([
      { id: "file-missing", place: { from: 4, to: 14 }, suggestions: [{ text: '"parts/roof.sun"' }] },
    ]);
  });

  test("what is there and cannot be read is said to be so", async () => {
    const { project } = await load({
      "house.sun": 'use "folder.sun"\nuse "locked.sun"\nuse "notes.txt"\n',
      "folder.sun": { is: "folder" },
      "locked.sun": { is: "locked" },
      "notes.txt": "text",
    });
    const found = problems(project, "house.sun");
    expect(found.map((problem) => problem.id)).toEqual(["file-unreadable", "file-unreadable", "file-unreadable"]);
    expect(found[0]!.message).toContain("is a folder");
    expect(found[1]!.message).toContain("cannot be read");
    expect(found[2]!.message).toContain("does not end in .sun");
  });

  test("a missing entry file is no file, and says why", async () => {
    const { project, found } = await load({});
    expect(found).toBe(false);
    expect(project.failure(at("house.sun"))).toBe("missing");
  });

  test("files that use each other are told so in each of them, and nothing runs in a circle", async () => {
    const { project } = await load({
      "house.sun": 'use "a.sun"\n',
      "a.sun": 'use "b.sun"\n',
      "b.sun": 'use "a.sun"\nuse "b.sun"\n',
    });
    expect(problems(project, "house.sun")).toEqual([]);
    expect(problems(project, "a.sun").map((problem) => problem.id)).toEqual(["use-cycle"]);
    expect(problems(project, "b.sun").map((problem) => problem.id)).toEqual(["use-cycle", "use-cycle"]);
    expect(project.reach(at("house.sun"))).toEqual([at("house.sun"), at("a.sun"), at("b.sun")]);
  });

  test("a file that comes later heals the line that missed it", async () => {
    const { project } = await load({ "house.sun": 'use "a.sun"\nspd F1\n' });
    const before = project.fragments(at("house.sun"));
    expect(before[0]!.problems).toHaveLength(1);
    project.update(at("a.sun"), "part A is module\n");
    const after = project.fragments(at("house.sun"));
    expect(after[0]!.problems).toEqual([]);
    expect(after[1]).toBe(before[1]);
    project.remove(at("a.sun"));
    expect(project.wantedFiles()).toEqual([at("a.sun")]);
  });

  test("the fragments of a file are the same array until something in it changes", async () => {
    const { project } = await load({ "house.sun": 'use "gone.sun"\nspd F1\n' });
    const before = project.fragments(at("house.sun"));
    project.update(at("other.sun"), "spd F2\n");
    expect(project.fragments(at("house.sun"))).toBe(before);
    expect(project.update(at("house.sun"), 'use "gone.sun"\nspd F1\n')).toBe(false);
    expect(project.fragments(at("house.sun"))).toBe(before);
    const version = project.version(at("house.sun"));
    project.update(at("house.sun"), 'use "gone.sun"\nspd F12\n');
    expect(project.fragments(at("house.sun"))).not.toBe(before);
    expect(project.version(at("house.sun"))).toBe(version + 1);
  });

  test("changes are told", async () => {
    const { project } = await load({ "house.sun": "spd F1\n" });
    const told: string[] = [];
    project.onChange((uri) => told.push(uri));
    project.update(at("a.sun"), "");
    project.update(at("a.sun"), "");
    project.fail(at("a.sun"), "unreadable");
    expect(told).toEqual([at("a.sun"), at("a.sun")]);
  });
});
