import * as nodeModule from "node:module";

// Keeps the compiled form of the program between starts, which saves a fifth of the time to the first squiggle. It has
// to be asked for before the program is loaded, and older hosts do not know it.
nodeModule.enableCompileCache?.();
require("./server-program.cjs");
