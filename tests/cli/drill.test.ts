import { expect, it } from "vitest";
import { design, inTwoFiles, stringLine } from "./designs.js";
import { folderWith, sunwright, sunwrightHere } from "./program.js";

const same = "findings and expectations are the same.";

it("holds where findings and expectations are the same set", () => {
  const folder = folderWith({
    "good.sun": design(10),
    "cold.sun": `${design(15)}expect string-voltage on S1\n`,
    "twice.sun": `${design(15)}expect string-voltage on S1\nexpect string-voltage on S1\n`,
  });
  const { code, out, err } = sunwright(["drill", "."], { folder });
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(out).toContain("holds   cold.sun  1 expected\n");
  expect(out).toContain("holds   good.sun  0 expected\n");
  expect(out).toContain(`3 designs: ${same}`);
});

it("says what is missing and what is extra, and where", async () => {
  const text = `${design(15)}expect tracker-current on INV.pv1\n`;
  const folder = folderWith({ "cold.sun": text, "good.sun": design(10) });
  const { code, out } = await sunwrightHere(["drill", "."], folder);
  expect(code).toBe(1);
  const last = text.split("\n").length - 1;
  expect(out).toContain("failed  cold.sun  1 expected\n");
  expect(out).toContain(`cold.sun:${last}:8  missing: tracker-current on INV.pv1 is expected and was not found.\n`);
  expect(out).toContain(`cold.sun:${stringLine}:14  extra: string-voltage on S1 is found and not expected.\n`);
  expect(out).toContain("holds   good.sun");
  expect(out).toContain("2 designs: 1 failed, see above.");
});

it("takes a finding on one thing for no answer to an expectation on another", async () => {
  const folder = folderWith({ "cold.sun": `${design(15)}expect string-voltage on INV\n` });
  const { code, out } = await sunwrightHere(["drill", "cold.sun"], folder);
  expect(code).toBe(1);
  expect(out).toContain("missing: string-voltage on INV");
  expect(out).toContain("extra: string-voltage on S1");
});

it("takes a finding that is departed from for none", async () => {
  const answered = `${design(15)}departure string-voltage on S1 because "agreed in writing"\n`;
  const folder = folderWith({ "answered.sun": answered, "wrong.sun": `${answered}expect string-voltage on S1\n` });
  expect((await sunwrightHere(["drill", "answered.sun"], folder)).code).toBe(0);
  expect((await sunwrightHere(["drill", "wrong.sun"], folder)).out).toContain("missing: string-voltage on S1");
});

it("fails on an error of the text that is not expected, and not on one that is", async () => {
  const wrong = `${design(10)}string S2 is 3 x Sorel420\n`;
  const folder = folderWith({ "wrong.sun": wrong, "meant.sun": `${wrong}expect unknown-name on S2\n` });
  const { code, out } = await sunwrightHere(["drill", "wrong.sun"], folder);
  expect(code).toBe(1);
  expect(out).toMatch(/wrong\.sun:\d+:18 {2}error of the text: unknown-name\n/);
  expect(await sunwrightHere(["drill", "meant.sun"], folder)).toMatchObject({ code: 0 });
});

it("fails on an expectation of a rule that does not exist", async () => {
  const folder = folderWith({ "cold.sun": `${design(10)}expect string-voltag on S1\n` });
  const { code, out } = await sunwrightHere(["drill", "cold.sun"], folder);
  expect(code).toBe(1);
  expect(out).toContain("error of the text: unknown-rule");
  expect(out).toContain("Did you mean string-voltage?");
});

it("leaves parts files out, unless something is wrong with them", async () => {
  const folder = folderWith({
    ...inTwoFiles(10),
    "sound.sun": "part A is cable {}\n",
    "broken.sun": "part B is cabel {}\n",
  });
  const good = await sunwrightHere(["drill", "barn.sun", "parts", "sound.sun"], folder);
  expect(good.code).toBe(0);
  expect(good.out).toContain(`1 design: ${same}`);
  const bad = await sunwrightHere(["drill", "."], folder);
  expect(bad.code).toBe(1);
  expect(bad.out).toContain("failed  broken.sun");
});

it("has exit code 2 for what cannot be read, and still drills the rest", () => {
  const folder = folderWith({ "good.sun": design(10), "sheet.sun": "part A is cable {}\n" });
  const { code, out, err } = sunwright(["drill", "gone.sun", "good.sun"], { folder });
  expect(code).toBe(2);
  expect(err).toContain("gone.sun does not exist.");
  expect(out).toContain("holds   good.sun");
  expect(sunwright(["drill", "sheet.sun"], { folder })).toEqual({
    code: 2,
    out: "",
    err: "There is no design among these files, only parts.\n",
  });
});
