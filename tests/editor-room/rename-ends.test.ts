import { expect, test } from "vitest";
import { nameAt } from "../../language-server/src/editor/navigate.js";
import { wordsOf } from "../../language-server/src/editor/words.js";
import { absolute } from "../../language-server/src/place.js";
import { goodDesigns } from "../examples/examples.js";
import { filesOf } from "./example-files.js";
import { TestWorkspace, uriOf } from "./workspace.js";

test.each(goodDesigns.map((name) => [name]))(
  "%s: a cursor anywhere on a name is on that name and on no other",
  (name) => {
    const workspace = new TestWorkspace(filesOf(name));
    const uri = uriOf(name);
    const text = workspace.text(uri)!;
    let ends = 0;
    for (const { declarations } of workspace.fragments(uri))
      for (const declaration of declarations)
        for (const { word } of wordsOf(declaration)) {
          if (word.is !== "mention") continue;
          for (const place of word.mention.places) {
            const { start, end } = absolute(place);
            for (let offset = start; offset <= end; offset++) {
              // Terminals (`CHG.grid`) are no names: nothing is found there, not what is nearest.
              const found = nameAt(workspace.view, uri, offset);
              if (!found) continue;
              expect(found.declaration.name).toBe(text.slice(start, end));
              ends++;
            }
          }
        }
    expect(ends).toBeGreaterThan(100);
  },
);
