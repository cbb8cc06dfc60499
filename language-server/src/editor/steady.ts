import type { Declaration, Fragment } from "../design/model.js";

interface Memory {
  /** The fragments as they were read. */
  readonly read: readonly Fragment[];
  readonly steady: readonly Fragment[];
}

/**
 * The fragments that a design is computed from while its text is being typed: a piece that cannot be read says what it
 * said when it last could be. So a half-typed site does not lose its temperatures, a half-typed inverter not its
 * trackers, and nothing else changes until the line is finished. Only the piece itself has nothing reported on it.
 */
export class SteadyFragments {
  private readonly files = new Map<string, Memory>();

  of(uri: string, read: readonly Fragment[]): readonly Fragment[] {
    const known = this.files.get(uri);
    if (known?.read === read) return known.steady;
    const steady = known ? steadied(known, read) : read;
    this.files.set(uri, { read, steady });
    return steady;
  }

  forget(uri: string): void {
    this.files.delete(uri);
  }
}

function steadied(before: Memory, read: readonly Fragment[]): readonly Fragment[] {
  // A piece whose chunk is the same object has the same text.
  const old = before.read;
  const shorter = Math.min(old.length, read.length);
  let front = 0;
  while (front < shorter && old[front]!.chunk === read[front]!.chunk) front++;
  // A head that waits for its block is read anew with whatever comes behind it.
  while (front > 0 && isBareHead(old[front - 1]) && before.steady[front - 1]!.broken) front--;
  let back = 0;
  while (back < shorter - front && old[old.length - 1 - back]!.chunk === read[read.length - 1 - back]!.chunk) back++;
  if (back > 0 && isBareHead(read[read.length - back - 1]) && read[read.length - back]!.broken) back--;

  const fresh = read.slice(front, read.length - back);
  const replaced = before.steady.slice(front, old.length - back);
  const changed = fresh.some(({ broken }) => broken) ? withLast(fresh, replaced) : fresh;
  if (before.steady === old && changed === fresh) return read;
  if (!read.some(({ broken }) => broken)) return read;
  return [...before.steady.slice(0, front), ...changed, ...(back > 0 ? before.steady.slice(-back) : [])];
}

/** Gives what was last declared, and is declared by nothing readable now, to the first piece that cannot be read. */
function withLast(read: readonly Fragment[], replaced: readonly Fragment[]): readonly Fragment[] {
  const fresh = read.map((fragment, index) =>
    read[index + 1]?.broken && isBareHead(fragment) ? { ...fragment, broken: true } : fragment,
  );
  const sound = new Set(fresh.filter(({ broken }) => !broken).flatMap(({ declarations }) => declarations.map(keyOf)));
  const last = replaced.flatMap(({ declarations }) => declarations).filter((one) => !sound.has(keyOf(one)));
  if (last.length === 0) return read;
  let isFirst = true;
  return fresh.map((fragment) => {
    if (!fragment.broken) return fragment;
    // What the piece itself seems to declare is half a name.
    const declarations = isFirst ? last : [];
    isFirst = false;
    return { ...fragment, declarations };
  });
}

/** `site "Alder Cottage"` whose brace is being typed: readable by itself, and what it says stands in pieces behind it. */
function isBareHead(fragment: Fragment | undefined): boolean {
  const last = fragment?.declarations[fragment.declarations.length - 1];
  return fragment?.broken === false && last !== undefined && "properties" in last && last.bodyPlace === undefined;
}

/** What makes two declarations the same one in two versions. */
function keyOf(declaration: Declaration): string {
  switch (declaration.declares) {
    case "use":
      return `use ${declaration.path}`;
    case "measured":
      return `measured ${declaration.target.path.join(".")} ${declaration.day}`;
    case "departure":
    case "expect":
      return `${declaration.declares} ${declaration.rule} ${declaration.target?.path.join(".")}`;
    default:
      return `${declaration.declares} ${declaration.name}`;
  }
}
