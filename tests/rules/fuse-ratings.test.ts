import { expect, test } from "vitest";
import { fuseAtMost } from "../../language-server/src/rules/fuse-ratings.js";

// Preferred ratings of IEC 60269-1, from memory.
test.each([
  [78.3, 63],
  [63, 63],
  [62.99, 50],
  [37.8, 32],
  [100, 100],
  [12, undefined],
  [-3, undefined],
])("the largest preferred rating of a fuse-link up to %s A is %s A", (current, rating) => {
  expect(fuseAtMost(current)).toBe(rating);
});
