import { Uri, workspace } from "vscode";
import { place } from "./place";
import { leaveOut } from "./run-all";

const decoder = new TextDecoder();

/** What is known of the host that the tests run in; nothing where no hands help from outside, as on the desktop. */
interface Stage {
  readonly address?: string;
  readonly host: "desktop" | "node" | "web";
}

let found: Promise<Stage> | undefined;

export function stage(): Promise<Stage> {
  const file = Uri.joinPath(place, ".stage.json");
  found ??= Promise.resolve(workspace.fs.readFile(file)).then(
    (content) => JSON.parse(decoder.decode(content)) as Stage,
    () => ({ host: "desktop" }),
  );
  return found;
}

/** Has something done from outside; leaves the test out where there is nobody to do it. */
export async function hand<Result = void>(test: Mocha.Context, name: string, given: object = {}): Promise<Result> {
  const { address } = await stage();
  if (address === undefined) return leaveOut(test, "nobody presses keys or looks at the page in this host");
  const response = await fetch(`${address}/${name}`, { method: "POST", body: JSON.stringify(given) });
  if (!response.ok) throw new Error(`${name}: ${await response.text()}`);
  return response.json() as Promise<Result>;
}
