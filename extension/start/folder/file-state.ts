/** What the editor's side is told of a file; the kinds are those of the editor's own interface. */
export interface FileState {
  readonly type: number;
  readonly size: number;
  readonly mtime: number;
  readonly ctime: number;
  readonly isReadOnly: boolean;
}

/** Something happened to a path: its content changed, or it came, went or got another name. */
export type FileNotice = readonly [event: "change" | "rename", path: string];
