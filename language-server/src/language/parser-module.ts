import { EmptyFileSystem } from "langium";
import type { ChunkParser } from "./chunk-parser.js";
import { createSunwrightCoreServices } from "./core-module.js";

/** A parser of chunks by itself, with nothing around it: for whoever has texts and wants fragments. */
export function createChunkParser(): ChunkParser {
  return createSunwrightCoreServices(EmptyFileSystem).sunwright.ChunkParser;
}
