/** What a host is started with. */
export interface HostOptions {
  /** A folder that is there for the tests. */
  readonly folder: string;
  /** What of it is opened, by path: the empty path is the folder itself; without one the window is empty. */
  readonly opened?: string;
  /** Folder of the tests' bundle for this host. */
  readonly tests: string;
  /** An extension that is nothing but the one under development, as the tests' driver wants one. */
  readonly development: string;
  readonly vsix: string;
  readonly isTrusted: boolean;
  /** The reader's; English without. */
  readonly language?: string;
  /** For whatever the host writes. */
  readonly temporary: string;
}

/** A VS Code that waits to be opened in a browser. */
export interface Host {
  /** Opened here, the tests run. */
  readonly testing: string;
  /** Opened here, it is a window on the same workspace without tests. */
  readonly plain: string;
  /** Process of its server side, where it has one. */
  readonly pid?: number;
  stop(): Promise<void>;
}
