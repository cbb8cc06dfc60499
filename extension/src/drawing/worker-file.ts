/** The drawing program, below the extension: the same in the desktop and the browser. */
export const workerFile = ["dist", "drawing-worker.js"] as const;
