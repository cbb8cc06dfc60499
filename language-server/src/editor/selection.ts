import type { Block, Declaration } from "../design/model.js";
import type { Place } from "../place.js";
import { fragmentAt } from "./fragment-at.js";
import { locate } from "./locate.js";
import type { Span } from "./navigate.js";
import type { WorkspaceView } from "./workspace-view.js";

/** What to select around an offset, from the word outwards: segment, name, value, property, block, declaration, file. */
export function selectionsAt(view: WorkspaceView, uri: string, offset: number): Span[] {
  const text = view.sources.text(uri) ?? "";
  const fragments = view.sources.fragments(uri);
  const fragment = fragmentAt(fragments, offset);
  const places: Place[] = [];
  const located = locate(fragments, offset);
  if (located) {
    places.push(located.place);
    if (located.word.is === "mention") places.push(located.word.mention.place);
  }
  if (fragment) for (const declaration of fragment.declarations) places.push(...placesOf(declaration));
  const start = fragment?.chunk.start ?? 0;
  const spans = places.map(({ from, to }) => ({ uri, start: start + from, end: start + to }));
  const around = [...spans, { uri, start: 0, end: text.length }].filter(
    (span) => span.start <= offset && offset <= span.end,
  );
  around.sort((a, b) => a.end - a.start - (b.end - b.start));
  return nested(around);
}

function* placesOf(declaration: Declaration): Generator<Place> {
  yield declaration.place;
  if ("properties" in declaration) yield* placesInBlock(declaration);
}

function* placesInBlock({ bodyPlace, properties, nested: items }: Block): Generator<Place> {
  if (bodyPlace) {
    yield bodyPlace;
    yield { ...bodyPlace, from: bodyPlace.from + 1, to: bodyPlace.to - 1 };
  }
  for (const { place, valuePlace } of properties) {
    yield place;
    yield valuePlace;
  }
  for (const item of items) {
    yield item.place;
    yield* placesInBlock(item);
  }
}

/** Each inside the next; what only touches the offset and does not fit is left out. */
function nested(spans: readonly Span[]): Span[] {
  const chain: Span[] = [];
  for (const span of spans) {
    const inner = chain[chain.length - 1];
    if (!inner) chain.push(span);
    else if (span.start <= inner.start && inner.end <= span.end && (span.start < inner.start || inner.end < span.end))
      chain.push(span);
  }
  return chain;
}
