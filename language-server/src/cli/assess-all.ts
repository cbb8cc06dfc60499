import { assess } from "../assessment/assess.js";
import { assessWhatIf } from "../assessment/what-if.js";
import type { SourceFile } from "../design/design.js";
import type { Fragment } from "../design/model.js";
import type { Overlay } from "../design/what-if/overlay.js";
import type { Project } from "../language/project.js";
import type { Checked } from "./report/build.js";

/**
 * Assesses every design among some files, one at a time so that nobody has to hold them all: a file with a site, or one
 * that no other file of the project uses. Files that belong to a design are told about with it; of files that use each
 * other in a circle without a site, the first stands for all it reaches.
 *
 * `onFault` hears of designs on which the program itself fails; the others have their results all the same. With an
 * overlay every design is assessed as if its text said what is supposed.
 */
export function* assessAll(
  project: Project,
  asked: readonly string[],
  onFault: (uri: string, error: unknown) => void = rethrow,
  overlay?: Overlay,
): Generator<Checked> {
  const isEntry = (uri: string): boolean => declaresSite(project.fragments(uri)) || project.usedBy(uri).length === 0;
  const entries = new Set(asked.filter(isEntry));
  const covered = new Set([...entries].flatMap((uri) => project.reach(uri)));
  for (const uri of asked) {
    if (!entries.has(uri)) {
      if (covered.has(uri)) continue;
      for (const file of project.reach(uri)) covered.add(file);
    }
    try {
      yield assessed(project, uri, overlay);
    } catch (error) {
      onFault(uri, error);
    }
  }
}

function assessed(project: Project, uri: string, overlay?: Overlay): Checked {
  const files = project.reach(uri).map((file): SourceFile => ({ uri: file, fragments: project.fragments(file) }));
  const assessment = overlay ? assessWhatIf(files, overlay) : assess(files);
  return { files, assessment, isDesign: files[0]!.fragments.some(declaresItems) };
}

function rethrow(_uri: string, error: unknown): never {
  throw error;
}

function declaresSite(fragments: readonly Fragment[]): boolean {
  return fragments.some(({ declarations }) =>
    declarations.some((declaration) => declaration.declares === "item" && declaration.kind === "site"),
  );
}

function declaresItems({ declarations }: Fragment): boolean {
  return declarations.some(({ declares }) => declares === "item" || declares === "run");
}
