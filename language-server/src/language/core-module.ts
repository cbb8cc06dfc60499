import { SunwrightGeneratedModule, SunwrightGeneratedSharedModule } from "@sunwright/grammar/module";
import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  type DefaultSharedCoreModuleContext,
  inject,
  type LangiumCoreServices,
  type LangiumSharedCoreServices,
  type Module,
  type PartialLangiumCoreServices,
  type PartialLangiumSharedCoreServices,
} from "langium";
import { SunwrightDocumentBuilder, SunwrightIndexManager } from "./builder.js";
import { ChunkParser } from "./chunk-parser.js";
import { SunwrightDocumentFactory, SunwrightWorkspaceManager } from "./documents.js";
import { Project } from "./project.js";
import { SyntaxFaults } from "./syntax-faults.js";
import { SunwrightTokenBuilder } from "./tokens.js";
import { type Diagnoser, SunwrightDocumentValidator, TextDiagnoser } from "./validation.js";
import { SunwrightValueConverter } from "./value-converter.js";

/** Services of our own that all documents share. */
export interface SunwrightSharedOwnServices {
  readonly sunwright: { readonly Project: Project };
}
/** Services of our own for the language; none needs an editor. */
export interface SunwrightOwnServices {
  readonly sunwright: { readonly ChunkParser: ChunkParser; readonly Diagnoser: Diagnoser };
}
export type SunwrightSharedCoreServices = LangiumSharedCoreServices & SunwrightSharedOwnServices;
export type SunwrightCoreServices = LangiumCoreServices &
  SunwrightOwnServices & { readonly shared: SunwrightSharedCoreServices };

export const sharedModule: Module<
  SunwrightSharedCoreServices,
  PartialLangiumSharedCoreServices & SunwrightSharedOwnServices
> = {
  sunwright: {
    Project: (services) =>
      // The parser belongs to the language, which is registered after the shared services exist.
      new Project(() => (services.ServiceRegistry.all[0] as SunwrightCoreServices).sunwright.ChunkParser),
  },
  workspace: {
    LangiumDocumentFactory: (services) => new SunwrightDocumentFactory(services),
    DocumentBuilder: (services) => new SunwrightDocumentBuilder(services),
    IndexManager: (services) => new SunwrightIndexManager(services),
    WorkspaceManager: (services) => new SunwrightWorkspaceManager(services),
  },
};

export const languageModule: Module<SunwrightCoreServices, PartialLangiumCoreServices & SunwrightOwnServices> = {
  parser: {
    TokenBuilder: () => new SunwrightTokenBuilder(),
    ValueConverter: () => new SunwrightValueConverter(),
    ParserErrorMessageProvider: () => new SyntaxFaults(),
  },
  validation: {
    DocumentValidator: (services) => new SunwrightDocumentValidator(services),
  },
  sunwright: {
    ChunkParser: (services) => new ChunkParser(services.parser.LangiumParser, services.parser.Lexer),
    Diagnoser: (services) => new TextDiagnoser(services.shared.sunwright.Project),
  },
};

/** The language without an editor: for the command line, for tests, for whoever has texts and wants fragments. */
export function createSunwrightCoreServices(context: DefaultSharedCoreModuleContext): SunwrightCoreServices {
  const shared = inject(createDefaultSharedCoreModule(context), SunwrightGeneratedSharedModule, sharedModule);
  const services = inject(createDefaultCoreModule({ shared }), SunwrightGeneratedModule, languageModule);
  shared.ServiceRegistry.register(services);
  return services as SunwrightCoreServices;
}
