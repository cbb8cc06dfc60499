import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { text as readText } from "node:stream/consumers";

/** What the hands outside can do for a test, by name: takes and gives plain data. */
export type Hands = Readonly<Record<string, (given: never) => Promise<unknown>>>;

/** Where a test finds its hands: in this file, at the top of its folder. */
export const stageFile = ".stage.json";

/**
 * Lets tests inside an editor ask for what no extension can do: press a key, look at the page, end a process.
 * `POST /name` with JSON, answered with JSON; an Error comes back as status 500 with its message.
 */
export async function openStage(hands: Hands): Promise<{ readonly address: string; readonly server: Server }> {
  const server = createServer(async (request, response) => {
    // The editor's page has an origin of its own, and asks before it sends.
    response.setHeader("access-control-allow-origin", "*");
    response.setHeader("access-control-allow-headers", "*");
    if (request.method !== "POST") return void response.writeHead(204).end();
    try {
      const hand = hands[(request.url ?? "").slice(1)];
      if (!hand) throw new Error(`There is no hand for ${request.url}`);
      const result = await hand(JSON.parse((await readText(request)) || "null") as never);
      response.writeHead(200, { "content-type": "application/json" }).end(JSON.stringify(result ?? null));
    } catch (error) {
      response.writeHead(500).end(error instanceof Error ? error.message : String(error));
    }
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return { address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, server };
}
