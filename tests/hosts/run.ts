import { statSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { root, runScript } from "../../extension/start/programs.js";
import { type Choice, chooseHosts } from "./choose.js";
import { comparedExamples, differences } from "./compare.js";
import { printRun, printSummary } from "./print.js";
import { runSession, type SessionRun } from "./run-session.js";
import { sessions } from "./sessions.js";

/** In CI the server and the browser host must run; the desktop's needs a network that CI may not have. */
const isCi = Boolean(process.env.CI);
const needed = ["node", "web"];

const { values } = parseArgs({
  options: {
    install: { type: "boolean" },
    host: { type: "string", multiple: true },
    session: { type: "string", multiple: true },
    pictures: { type: "string" },
    only: { type: "string" },
  },
});
const pictures = values.pictures ?? join(root, "node_modules", ".cache", "sunwright-pictures");

console.log("Packaging the extension …");
runScript("package");
const vsix = join(root, "extension", "sunwright.vsix");
console.log(`Under test: extension/sunwright.vsix, ${Math.round(statSync(vsix).size / 1024)} kB`);

const choices = (await chooseHosts(Boolean(values.install) || isCi)).filter(({ host }) => wanted(values.host, host));
for (const { host, missing } of choices) console.log(`  ${host}: ${missing ? `left out, ${missing}` : "runs"}`);

const runs: SessionRun[] = [];
for (const choice of choices) if (!choice.missing) runs.push(...(await runHost(choice)));

const found = differences(runs);
const compared = comparedExamples(runs);
if (compared > 0) console.log(`\n${compared} examples, ${found.length} shown differently by the hosts`);
for (const difference of found) console.log(`  differs between hosts: ${difference}`);
const lacking = choices.filter(({ host, missing }) => isCi && missing && needed.includes(host));
for (const { host } of lacking) console.log(`  ${host} must run in CI`);
// A machine without any host has been told so; that is no failure there, but in CI it is.
const isGood = runs.length === 0 ? !isCi : printSummary(runs) && found.length === 0 && lacking.length === 0;
if (runs.length === 0) console.log("No test ran in a real editor.");
else console.log(`Pictures: ${pictures}`);
process.exit(isGood ? 0 : 1);

async function runHost({ host, desktop }: Choice): Promise<SessionRun[]> {
  const done: SessionRun[] = [];
  for (const session of sessions) {
    if (!wanted(values.session, session)) continue;
    console.log(`\n${host}, ${session}`);
    const run = () => runSession(host, session, { vsix, pictures, desktop, only: values.only });
    let result = await run();
    printRun(result);
    // A whole browser may go astray under load; what is broken fails in a new one as well.
    if (hasFailed(result)) {
      console.log(`\n${host}, ${session}: a second try, in a new host`);
      result = await run();
      printRun(result);
    }
    done.push(result);
  }
  return done;
}

function hasFailed({ failure, results }: SessionRun): boolean {
  return failure !== undefined || results.some(({ state }) => state === "failed");
}

function wanted(named: readonly string[] | undefined, name: string): boolean {
  return named === undefined || named.includes(name);
}
