import type { Block, DrawnBlock } from "./blocks";

/** As much as is needed of the library that makes the pages: the editor brings its own. */
export interface Markdown {
  readonly renderer: { readonly rules: { fence?: Rule | undefined } };
  readonly utils: { escapeHtml(text: string): string };
}
type Rule = (
  tokens: readonly Token[],
  index: number,
  options: object,
  env: object | undefined,
  self: { renderAttrs(token: Token): string },
) => string;
interface Token {
  readonly info: string;
  readonly content: string;
}

/** What this has to say in a page, in the reader's language. */
export interface FenceWords {
  readonly drawing: string;
  readonly text: string;
  readonly unknown: (word: string) => string;
}

/** What the editor tells of a page that it makes; another program tells nothing. */
interface Page {
  readonly currentDocument?: { toString(): string };
}

const languages = ["sun", "sunwright"];

/**
 * Blocks of designs in Markdown are shown as what they draw, with their text below: ```sun, or ```sun chart=margins for
 * a chart; ```sun code stays a text. What gives nothing to draw is the text that it was.
 */
export function sunFences<Library extends Markdown>(
  markdown: Library,
  find: (block: Block) => DrawnBlock | undefined,
  words: FenceWords,
): Library {
  const plain = markdown.renderer.rules.fence!;
  const escaped = (text: string): string => markdown.utils.escapeHtml(text);
  const paragraph = (sort: string, text: string): string => `<p class="sunwright-${sort}">${escaped(text)}</p>`;

  markdown.renderer.rules.fence = (tokens, index, options, env, self) => {
    const token = tokens[index]!;
    const code = (): string => plain(tokens, index, options, env, self);
    const [language = "", ...asked] = token.info.trim().split(/\s+/);
    if (!languages.includes(language) || asked.includes("code")) return code();
    const page = (env as Page | undefined)?.currentDocument?.toString();
    const chart = asked.find((word) => word.startsWith("chart="))?.slice("chart=".length);
    const unknown = asked.filter((word) => !word.startsWith("chart=")).map(words.unknown);
    const drawn = find({ text: token.content, ...(page !== undefined && { page }), ...(chart && { chart }) });
    const around = (inside: string): string => `<div class="sunwright-block">${inside}</div>\n`;
    if (!drawn) return around(code() + paragraph("waiting", words.drawing));
    const problems = [...unknown, ...drawn.problems].map((text) => paragraph("problem", text)).join("");
    if (drawn.svg === undefined) return problems === "" ? code() : around(code() + problems);
    const text = `<pre><code class="language-sun">${escaped(token.content)}</code></pre>`;
    const marks = drawn.marks.map(
      ({ number, severity, text }) =>
        `<li value="${number}"><strong>${escaped(severity)}</strong> ${escaped(text)}</li>`,
    );
    // Where it is written is said of what is seen: the editor scrolls text and page together by that.
    return [
      `<div class="sunwright-block"><div${self.renderAttrs(token)}>`,
      `<div class="sunwright-picture">${drawn.svg}</div></div>`,
      problems,
      marks.length > 0 ? `<ol class="sunwright-marks">${marks.join("")}</ol>` : "",
      ...drawn.cautions.map((text) => paragraph("caution", text)),
      `<details><summary>${escaped(words.text)}</summary>${text}</details></div>\n`,
    ].join("");
  };
  return markdown;
}
