import type { Design } from "../../design/design.js";
import type { Declaration } from "../../design/model.js";
import type { Edit } from "../edits/change.js";
import type { WorkspaceView } from "../workspace-view.js";

/** Kinds as the protocol has them; editors sort their menus by them. */
export type RefactoringKind = "refactor.extract" | "refactor.rewrite" | "refactor.move";

/** A change of how the design is written, or of what it consists of, that nothing has asked for. */
export interface Refactoring extends Edit {
  readonly title: string;
  readonly kind: RefactoringKind;
}

/** Where refactorings are asked for. */
export interface Asked {
  readonly view: WorkspaceView;
  readonly uri: string;
  readonly text: string;
  /** The declaration that the cursor, or all that is selected, stands in. */
  readonly declaration: Declaration;
  readonly start: number;
  readonly end: number;
  /** Every design that the file belongs to; what is written has to fit them all. */
  readonly designs: readonly Design[];
}
