import { expect, it, vi } from "vitest";
import { design } from "./designs.js";
import { folderWith, sunwrightHere } from "./program.js";

vi.mock("../../language-server/src/assessment/assess.js", async (original) => {
  const { assess } = await original<typeof import("../../language-server/src/assessment/assess.js")>();
  return {
    assess: (files: Parameters<typeof assess>[0]) => {
      if (files[0]?.uri.endsWith("odd.sun")) throw new Error("an odd design");
      return assess(files);
    },
  };
});

it("tells of a fault of the program itself on one design, and checks the others", async () => {
  const folder = folderWith({ "good.sun": design(10), "odd.sun": design(10) });
  const { code, out, err } = await sunwrightHere(["check", "."], folder);
  expect(code).toBe(2);
  expect(err).toBe("odd.sun could not be checked: there is a fault in sunwright itself (Error: an odd design).\n");
  expect(out).toContain("good.sun  Reed Barn");
  expect(out).not.toContain("odd.sun");
});
