/**
 * Designs in Markdown: a block that begins with ```sun is written in our language. Injected into the grammar of Markdown,
 * whose own list of languages cannot be added to.
 */
export function markdownFenceGrammar(): object {
  return {
    scopeName: "markdown.sunwright.codeblock",
    injectionSelector: "L:text.html.markdown",
    patterns: [{ include: "#sunwright-block" }],
    repository: {
      "sunwright-block": {
        begin: "(^|\\G)(\\s*)(`{3,}|~{3,})\\s*((?:sun|sunwright))(?=\\s|$)([^`]*)$",
        beginCaptures: {
          "3": { name: "punctuation.definition.markdown" },
          "4": { name: "fenced_code.block.language.markdown" },
          "5": { name: "fenced_code.block.language.attributes.markdown" },
        },
        end: "(^|\\G)(\\2|\\s{0,3})(\\3)\\s*$",
        endCaptures: { "3": { name: "punctuation.definition.markdown" } },
        name: "markup.fenced_code.block.markdown",
        patterns: [
          {
            begin: "(^|\\G)(\\s*)(.*)",
            while: "(^|\\G)(?!\\s*([`~]{3,})\\s*$)",
            contentName: "meta.embedded.block.sunwright",
            patterns: [{ include: "source.sunwright" }],
          },
        ],
      },
    },
  };
}
