import type { BaseLanguageClient } from "vscode-languageclient";
import type { Asked } from "../../../language-server/src/editor/guided/answer";
import type { KnownPart } from "../../../language-server/src/editor/guided/known-parts";
import type { PartPlan } from "../../../language-server/src/editor/guided/part-text";
import type { Sheet, SheetKind } from "../../../language-server/src/editor/guided/sheet";
import type { SitePlan, SiteText } from "../../../language-server/src/editor/guided/site-text";

/** The server, as whoever leads a user asks it. */
export class Guide {
  constructor(private readonly client: BaseLanguageClient) {}

  sheetKinds(): Promise<SheetKind[]> {
    return this.client.sendRequest("sunwright/sheetKinds");
  }
  sheet(kind: string): Promise<Sheet | null> {
    return this.client.sendRequest("sunwright/sheet", { kind });
  }
  async answerProblem(asked: Asked & { answer: string }): Promise<string | undefined> {
    return (await this.client.sendRequest<string | null>("sunwright/answerProblem", asked)) ?? undefined;
  }
  async nameProblem(name: string): Promise<string | undefined> {
    return (await this.client.sendRequest<string | null>("sunwright/nameProblem", { name })) ?? undefined;
  }
  parts(kinds: readonly string[]): Promise<KnownPart[]> {
    return this.client.sendRequest("sunwright/parts", { kinds });
  }
  partText(plan: PartPlan): Promise<string> {
    return this.client.sendRequest("sunwright/partText", plan);
  }
  siteText(plan: SitePlan, uri: string): Promise<SiteText> {
    return this.client.sendRequest("sunwright/siteText", { plan, uri });
  }
}
