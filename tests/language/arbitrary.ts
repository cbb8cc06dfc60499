import fc from "fast-check";

/**
 * Valid designs as lists of words, so that a test may join them with any blanks, line breaks and comments. Names are
 * drawn from everything that may be one, the language's own words included.
 */

const plainNames = ["S1", "W-1", "A", "m", "x2", "Hollin430", "plant_room", "Dach-Süd", "αβ", "K9"];
const awkwardNames = [
  "on",
  "x",
  "is",
  "use",
  "yes",
  "no",
  "of",
  "to",
  "from",
  "part",
  "run",
  "serves",
  "way",
  "because",
];

const name = fc.constantFrom(...plainNames, ...awkwardNames);
const kind = fc.constantFrom("string", "isolator", "inverter", "spd", "board", "fuse", "gadget");
const mention = fc
  .array(name, { minLength: 1, maxLength: 3 })
  .map((path) => path.flatMap((word, index) => (index === 0 ? [word] : [".", word])));
const text: fc.Arbitrary<string> = fc.constantFrom(
  '"garage"',
  '"a { b"',
  '"say \\"hi\\""',
  '"// no comment"',
  '""',
  '"/*"',
);
/** All with a unit: a bare number takes the next word for its unit where that word ends the line, as the rules say. */
const quantity: fc.Arbitrary<string> = fc.constantFrom(
  "18 m",
  "35 deg",
  "1.2m",
  "-10 degC",
  "16 mm²",
  "0.5 /km2/yr",
  "2/0 AWG",
  "4 %",
);

const value: fc.Arbitrary<string[]> = fc.oneof(
  quantity.map((word) => [word]),
  text.map((word) => [word]),
  fc.constantFrom<string[]>(
    ["yes"],
    ["no"],
    ["2026-06-12"],
    ["80", "..", "550 V"],
    ["[", "1", ",", "2 m", "]"],
    ["[", "]"],
  ),
);
/** A value and then `from` would be a source: the generator does not write a property of that name next. */
const property = fc
  .tuple(
    name.filter((word) => word !== "from"),
    value,
    fc.option(text),
  )
  .map(([word, what, source]) => [word, ":", ...what, ...(source === null ? [] : ["from", source])]);

/** Inside braces a word on the next line begins the next member, so that these are kept together. */
const wordProperty = fc
  .tuple(
    name.filter((word) => word !== "from"),
    mention,
  )
  .map(([word, what]) => [`${word} : ${what.join("")}`]);
const nested = fc.tuple(kind, name, fc.option(mention)).map(([what, word, part]) => {
  return [part === null ? `${what} ${word}` : `${what} ${word} is ${part.join("")}`, "{", "}"];
});
const member = fc.oneof(
  { weight: 3, arbitrary: property },
  { weight: 1, arbitrary: wordProperty },
  { weight: 1, arbitrary: nested },
);
const body = fc
  .option(fc.array(member, { maxLength: 3 }), { freq: 2 })
  .map((members) => (members === null ? [] : ["{", ...members.flat(), "}"]));

const item = fc
  .tuple(
    kind,
    name,
    fc.option(fc.tuple(fc.constantFrom<string[]>([], ["11", "x"], ["2", "×"]), mention)),
    fc.option(
      fc.oneof(
        mention,
        text.map((word) => [word]),
      ),
    ),
    body,
  )
  .map(([what, word, part, serves, block]) => [
    what,
    word,
    ...(part === null ? [] : ["is", ...part[0], ...part[1]]),
    ...(serves === null ? [] : ["serves", ...serves]),
    ...block,
  ]);
const titled = fc.tuple(kind, text, body).map(([what, title, block]) => [what, title, ...block]);
const nameless = kind.map((what) => [what, "{", "}"]);
const use = text.map((path) => ["use", path]);
const part = fc.tuple(name, name, body).map(([word, what, block]) => ["part", word, "is", what, ...block]);
const run = fc
  .tuple(name, mention, mention, fc.option(fc.tuple(quantity, mention)), body)
  .map(([word, from, to, cable, block]) => [
    "run",
    word,
    "from",
    ...from,
    "to",
    ...to,
    ...(cable === null ? [] : [":", cable[0], "of", ...cable[1]]),
    ...block,
  ]);
const reading = fc
  .tuple(mention, fc.option(fc.constant("2026-06-12")))
  .map(([what, day]) => ["measured", ...what, ...(day === null ? [] : ["on", day]), "{", "}"]);
const departure = fc
  .tuple(name, mention, text)
  .map(([rule, what, reason]) => ["departure", rule, "on", ...what, "because", reason]);
const expectation = fc.tuple(name, mention).map(([rule, what]) => ["expect", rule, "on", ...what]);

/** One declaration as words. */
export const declaration: fc.Arbitrary<string[]> = fc.oneof(
  item,
  titled,
  nameless,
  use,
  part,
  run,
  reading,
  departure,
  expectation,
);

/** What may stand between two words. */
const gap: fc.Arbitrary<string> = fc.constantFrom(
  " ",
  " ",
  " ",
  "\n",
  "\r\n",
  "  ",
  "\t",
  "\n    ",
  " // note {\n",
  ' /* a " b */ ',
  "\n\n",
  "\n/** doc */\n",
);

const kindWords = new Set(["string", "isolator", "inverter", "spd", "board", "fuse", "gadget"]);
const begins = new Set(["use", "part", "run", "measured", "departure", "expect", "way"]);

/**
 * A text of declarations with anything between the words. One thing it does not do: break the line in front of a name
 * that is also a word a declaration begins with, because there a reader, too, sees the next declaration.
 */
export const validText: fc.Arbitrary<string> = fc.array(declaration, { maxLength: 6 }).chain((declarations) => {
  const words = declarations.flat();
  const starts = new Set<number>();
  let count = 0;
  for (const each of declarations) {
    starts.add(count);
    count += each.length;
  }
  return fc.array(gap, { minLength: words.length, maxLength: words.length }).map((gaps) =>
    words
      .map((word, index) => {
        const space = gaps[index]!;
        const ambiguous = (kindWords.has(word) || begins.has(word)) && !starts.has(index);
        return (ambiguous && /[\n\r]$/.test(space) ? `${space}  ` : space) + word;
      })
      .join(""),
  );
});

/** Text that looks like a design and is broken in every way. */
export const wildText: fc.Arbitrary<string> = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        "{",
        "}",
        "[",
        "]",
        '"',
        "/*",
        "*/",
        "/**",
        "//",
        "\n",
        "\n",
        "\r",
        ":",
        ".",
        "..",
        ",",
        " ",
        " ",
        "\0",
        "\uFEFF",
        "\uD800",
        "é",
        "×",
        "−",
        "18",
        "18 m",
        "1,2",
        "string",
        "S1",
        "is",
        "x",
        "run",
        "from",
        "to",
        "of",
        "use",
        "part",
        "measured",
        "on",
        "way",
        "serves",
        "$",
        "\\",
        "-",
        "because",
        "string S1 is 2 x P { tilt: 3 deg }\n",
      ),
      fc.string({ unit: "binary", maxLength: 4 }),
    ),
    { maxLength: 60 },
  )
  .map((pieces) => pieces.join(""));
