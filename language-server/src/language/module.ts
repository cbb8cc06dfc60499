import { SunwrightGeneratedModule, SunwrightGeneratedSharedModule } from "@sunwright/grammar/module";
import { type DeepPartial, inject, type Module } from "langium";
import {
  createDefaultModule,
  createDefaultSharedModule,
  type DefaultSharedModuleContext,
  type LangiumServices,
  type LangiumSharedServices,
  type PartialLangiumServices,
  type PartialLangiumSharedServices,
} from "langium/lsp";
import {
  languageModule,
  type SunwrightOwnServices,
  type SunwrightSharedOwnServices,
  sharedModule,
} from "./core-module.js";
import { SunwrightUpdateHandler } from "./updates.js";

export type SunwrightSharedServices = LangiumSharedServices & SunwrightSharedOwnServices;
export type SunwrightServices = LangiumServices & SunwrightOwnServices & { readonly shared: SunwrightSharedServices };

/** What an editor adds: requests answered from an assessment, and the diagnoser that has one. */
export interface EditorModules {
  readonly shared?: Module<SunwrightSharedServices, PartialLangiumSharedServices>;
  readonly language?: Module<SunwrightServices, PartialLangiumServices & DeepPartial<SunwrightOwnServices>>;
}

/**
 * The language for an editor, in Node or in a browser: `context` brings the connection and the file system. What an
 * editor shows is not known here; it comes as modules.
 */
export function createSunwrightServices(context: DefaultSharedModuleContext, editor: EditorModules = {}) {
  const shared = inject(
    createDefaultSharedModule(context),
    SunwrightGeneratedSharedModule,
    sharedModule,
    updatesModule,
    editor.shared,
  ) as SunwrightSharedServices;
  const sunwright = inject(
    createDefaultModule({ shared }),
    SunwrightGeneratedModule,
    languageModule,
    noCompletionParser,
    editor.language,
  ) as SunwrightServices;
  shared.ServiceRegistry.register(sunwright);
  return { shared, sunwright };
}

const updatesModule: Module<LangiumSharedServices, PartialLangiumSharedServices> = {
  lsp: { DocumentUpdateHandler: (services) => new SunwrightUpdateHandler(services) },
};

/** The framework's second parser, which all editors would wait for at the start. Completion here reads tokens instead. */
const noCompletionParser: Module<LangiumServices, PartialLangiumServices> = {
  parser: { CompletionParser: () => undefined as never },
};
