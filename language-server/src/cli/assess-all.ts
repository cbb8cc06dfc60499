import { assess } from "../assessment/assess.js";
import type { SourceFile } from "../design/design.js";
import type { Fragment } from "../design/model.js";
import type { Project } from "../language/project.js";
import type { Checked } from "./report/build.js";

export interface AllAssessed {
  readonly checked: readonly Checked[];
  /** Designs on which the program itself failed: the others have their results all the same. */
  readonly failed: readonly { readonly uri: string; readonly error: unknown }[];
}

/**
 * Assesses every design among some files: a file with a site, or one that no other file of the project uses. Files that
 * belong to a design are told about with it; those that only use each other are looked at one by one.
 */
export function assessAll(project: Project, asked: readonly string[]): AllAssessed {
  const covered = new Set<string>();
  const assessed = new Map<string, Checked>();
  const failed: { uri: string; error: unknown }[] = [];
  const take = (uri: string): void => {
    const files = project.reach(uri).map((file): SourceFile => ({ uri: file, fragments: project.fragments(file) }));
    for (const file of files) covered.add(file.uri);
    try {
      assessed.set(uri, { files, assessment: assess(files), isDesign: files[0]!.fragments.some(declaresItems) });
    } catch (error) {
      failed.push({ uri, error });
    }
  };
  for (const uri of asked) if (declaresSite(project.fragments(uri)) || project.usedBy(uri).length === 0) take(uri);
  for (const uri of asked) if (!covered.has(uri)) take(uri);
  return { checked: asked.flatMap((uri) => assessed.get(uri) ?? []), failed };
}

function declaresSite(fragments: readonly Fragment[]): boolean {
  return fragments.some(({ declarations }) =>
    declarations.some((declaration) => declaration.declares === "item" && declaration.kind === "site"),
  );
}

function declaresItems({ declarations }: Fragment): boolean {
  return declarations.some(({ declares }) => declares === "item" || declares === "run");
}
