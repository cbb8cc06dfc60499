import { SunwrightGeneratedModule, SunwrightGeneratedSharedModule } from "@sunwright/grammar/module";
import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  EmptyFileSystem,
  inject,
  type LangiumCoreServices,
  type Module,
  type PartialLangiumCoreServices,
} from "langium";
import { ChunkParser } from "./chunk-parser.js";
import { SyntaxMessages } from "./syntax-messages.js";
import { SunwrightTokenBuilder } from "./tokens.js";
import { SunwrightValueConverter } from "./value-converter.js";

/** Services of our own that belong to the language and need no editor. */
export interface SunwrightOwnServices {
  readonly sunwright: { readonly ChunkParser: ChunkParser };
}
export type SunwrightCoreServices = LangiumCoreServices & SunwrightOwnServices;

/** How text becomes a tree: tokens, values, messages. */
export const parserModule: Module<SunwrightCoreServices, PartialLangiumCoreServices & SunwrightOwnServices> = {
  parser: {
    TokenBuilder: () => new SunwrightTokenBuilder(),
    ValueConverter: () => new SunwrightValueConverter(),
    ParserErrorMessageProvider: () => new SyntaxMessages(),
  },
  sunwright: {
    ChunkParser: (services) =>
      new ChunkParser(services.parser.LangiumParser, services.parser.ParserErrorMessageProvider as SyntaxMessages),
  },
};

/** A parser of chunks by itself, with nothing around it: for whoever has texts and wants fragments. */
export function createChunkParser(): ChunkParser {
  const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), SunwrightGeneratedSharedModule);
  const services = inject(createDefaultCoreModule({ shared }), SunwrightGeneratedModule, parserModule);
  return services.sunwright.ChunkParser;
}
