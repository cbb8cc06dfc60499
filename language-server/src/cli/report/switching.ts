import type { IsolationReport, LiveReport } from "../../isolation/report.js";
import type { NamedDesign } from "../switching.js";
import type { SuppositionReport } from "./report.js";
import { whatIfReport } from "./what-if.js";

/** What every answer about switching begins with; documented by `schema/live.schema.json` and `isolate.schema.json`. */
interface Answer {
  readonly $schema: string;
  readonly schemaVersion: 1;
  readonly tool: { readonly name: "sunwright"; readonly version: string };
  readonly file: string;
  readonly site?: string;
  /** What was supposed with --set; absent where the answer is of the text as it is. */
  readonly whatIf?: readonly SuppositionReport[];
}
export type LiveAnswer = Answer & LiveReport;
export type IsolateAnswer = Answer & IsolationReport;

export function liveAnswer(design: NamedDesign, version: string, report: LiveReport): LiveAnswer {
  return { ...answer("urn:sunwright:schema:live:1", design, version), ...report };
}

export function isolateAnswer(design: NamedDesign, version: string, report: IsolationReport): IsolateAnswer {
  return { ...answer("urn:sunwright:schema:isolate:1", design, version), ...report };
}

function answer($schema: string, { file, assessment }: NamedDesign, version: string): Answer {
  const { design, whatIf } = assessment;
  return {
    $schema,
    schemaVersion: 1,
    tool: { name: "sunwright", version },
    file,
    site: design.site?.declaration.title,
    ...(whatIf && { whatIf: whatIfReport(whatIf).suppositions }),
  };
}
