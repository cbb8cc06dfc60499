import type { FileSystemProvider, URI } from "langium";
import { assess } from "../../assessment/assess.js";
import type { Assessment } from "../../assessment/assessment.js";
import { chartsOf } from "../../drawing/charts/charts.js";
import type { Diagram } from "../../drawing/diagram.js";
import { diagramOf } from "../../drawing/diagram-of.js";
import type { Picture } from "../../drawing/picture.js";
import type { ChunkParser } from "../../language/chunk-parser.js";
import { Project } from "../../language/project.js";
import { absolute } from "../../place.js";

/** A text that stands in no file of its own, as a block of a Markdown page does. */
export interface LooseText {
  readonly text: string;
  /** An address as if it were a file: `use` lines are read from its folder. */
  readonly uri: string;
  /** A chart by its name, in place of the diagram. */
  readonly chart?: string;
}

export interface TextPicture {
  /** At most one of the two. Neither where nothing in the text can be drawn, or some of it cannot be read. */
  readonly diagram?: Diagram;
  readonly chart?: Picture;
  /** What is wrong with the text, with its line where that is in the text itself. */
  readonly problems: readonly { readonly line?: number; readonly message: string }[];
  /** Files that it uses, those too that are not there. */
  readonly files: readonly string[];
}

/** What a text by itself gives to draw, with the files that it uses. */
export async function textPicture(
  { text, uri, chart }: LooseText,
  parser: ChunkParser,
  files: Pick<FileSystemProvider, "readFile" | "stat">,
): Promise<TextPicture> {
  const project = new Project(() => parser);
  const readFile = async (each: URI): Promise<string> => (each.toString() === uri ? text : files.readFile(each));
  await project.load(uri, { ...files, stat: (each) => files.stat(each), readFile } as FileSystemProvider);
  const reached = project.reach(uri);
  const fragments = project.fragments(uri);
  const assessment = assess(reached.map((file) => ({ uri: file, fragments: project.fragments(file) })));
  const isBroken = fragments.some(({ broken }) => broken);
  const drawn = isBroken ? {} : pictureIn(assessment, chart);
  const wrong = isBroken || isWhole(assessment, project.graph.uses(uri)) ? problemsOf(assessment, uri, text) : [];
  return {
    ...drawn,
    problems: [...wrong, ...("problems" in drawn ? drawn.problems : [])],
    files: project.graph.reach(uri).filter((file) => file !== uri),
  };
}

function pictureIn(
  assessment: Assessment,
  chart: string | undefined,
): Pick<TextPicture, "diagram" | "chart"> | Pick<TextPicture, "problems"> {
  if (chart === undefined) {
    const diagram = diagramOf(assessment);
    return diagram.nodes.length > 0 ? { diagram } : {};
  }
  const charts = chartsOf(assessment);
  const found = charts.find(({ name }) => name === chart);
  if (found) return { chart: found.picture() };
  const names = charts.map(({ name }) => name).join(", ");
  return { problems: [{ message: `There is no chart ${chart}. There are ${names}.` }] };
}

/** An excerpt leaves out what it needs, and nobody wants to be told so. */
function isWhole({ design }: Assessment, uses: readonly string[]): boolean {
  return design.site !== undefined || uses.length > 0;
}

function problemsOf({ problems }: Assessment, uri: string, text: string): TextPicture["problems"] {
  return problems
    .filter(({ severity }) => severity === "error")
    .map(({ message, place }) => {
      const { start } = absolute(place);
      return place.chunk.uri === uri ? { line: text.slice(0, start).split("\n").length, message } : { message };
    });
}
