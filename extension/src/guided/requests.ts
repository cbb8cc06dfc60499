import type { BaseLanguageClient } from "vscode-languageclient";

/* What the server knows of sheets, parts and new sites: see `guided-requests.ts` there. */

export interface SheetKind {
  readonly kind: string;
  readonly title: string;
  readonly help: string;
}
export interface SheetQuestion {
  readonly property: string;
  readonly symbol?: string;
  readonly help: string;
  readonly sheet?: string;
  readonly typical?: string;
  readonly form: string;
  readonly choices?: readonly string[];
  readonly isEssential: boolean;
}
export interface SheetBlock extends SheetKind {
  readonly isNamed: boolean;
  readonly questions: readonly SheetQuestion[];
}
export interface Sheet extends SheetKind {
  readonly questions: readonly SheetQuestion[];
  readonly blocks: readonly SheetBlock[];
}

export type Answers = Readonly<Record<string, string>>;
export interface PartPlan {
  readonly kind: string;
  readonly name: string;
  readonly answers: Answers;
  readonly blocks: readonly { readonly kind: string; readonly name?: string; readonly answers: Answers }[];
  readonly sheet: string;
}

export interface KnownPart {
  readonly name: string;
  readonly kind: string;
  readonly uri: string;
  readonly doc?: string;
}
export interface Chosen {
  readonly part?: KnownPart;
  readonly count?: string;
}
export interface SitePlan {
  readonly name: string;
  readonly rules?: string;
  readonly supply: Answers;
  readonly strings: readonly Chosen[];
  readonly inverter?: Chosen;
  readonly battery?: Chosen;
}
export interface SiteText {
  readonly text: string;
  readonly open: { readonly start: number; readonly end: number };
}

/** The server, as whoever leads a user asks it. */
export class Guide {
  constructor(private readonly client: BaseLanguageClient) {}

  sheetKinds(): Promise<SheetKind[]> {
    return this.client.sendRequest("sunwright/sheetKinds");
  }
  sheet(kind: string): Promise<Sheet | null> {
    return this.client.sendRequest("sunwright/sheet", { kind });
  }
  async answerProblem(asked: { kind: string; block?: string; property: string; answer: string }) {
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
