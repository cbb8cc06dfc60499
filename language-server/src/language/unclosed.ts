import type { Problem } from "../design/model.js";
import type { Places } from "./places.js";
import { commentEnd, isClosedString, stringEnd } from "./tokens.js";

/** The first string or block comment of a chunk that does not end. */
export function unclosedText(text: string, places: Places): Problem | undefined {
  if (!text.includes('"') && !text.includes("/*")) return undefined;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 34) {
      const end = stringEnd(text, at);
      if (!isClosedString(text.slice(at, end))) {
        return {
          id: "unclosed-string",
          severity: "error",
          message:
            'This text has no closing quote, so the rest of the line belongs to it. Write " where the text ends.',
          place: places.span(at, end),
        };
      }
      at = end - 1;
    } else if (code === 47 && text.charCodeAt(at + 1) === 47) {
      while (at < text.length && text.charCodeAt(at) !== 10 && text.charCodeAt(at) !== 13) at++;
    } else if (code === 47 && text.charCodeAt(at + 1) === 42) {
      const end = commentEnd(text, at);
      if (end - at < 4 || !text.startsWith("*/", end - 2)) {
        return {
          id: "unclosed-comment",
          severity: "error",
          message: "This comment is never closed, so everything behind it is left out. Write */ where it ends.",
          place: places.span(at, at + 2),
        };
      }
      at = end - 1;
    }
  }
  return undefined;
}
