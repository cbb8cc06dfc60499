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
  let back = 0;
  while (back < shorter - front && old[old.length - 1 - back]!.chunk === read[read.length - 1 - back]!.chunk) back++;

  const fresh = read.slice(front, read.length - back);
  const replaced = before.steady.slice(front, old.length - back);
  const changed = fresh.some(({ broken }) => broken) ? withLast(fresh, replaced) : fresh;
  if (before.steady === old && changed === fresh) return read;
  if (!read.some(({ broken }) => broken)) return read;
  return [
    ...kept(read.slice(0, front), before.steady),
    ...changed,
    ...(back > 0 ? kept(read.slice(-back), before.steady.slice(-back)) : []),
  ];
}

/** Unchanged pieces: those that stood in for unreadable text go on doing so. */
function kept(read: readonly Fragment[], steady: readonly Fragment[]): Fragment[] {
  return read.map((fragment, index) =>
    fragment.broken ? { ...fragment, declarations: steady[index]!.declarations } : fragment,
  );
}

/** Gives what was last declared, and is declared by nothing readable now, to the first piece that cannot be read. */
function withLast(fresh: readonly Fragment[], replaced: readonly Fragment[]): readonly Fragment[] {
  const sound = new Set(fresh.filter(({ broken }) => !broken).flatMap(({ declarations }) => declarations.map(keyOf)));
  const last = replaced.flatMap(({ declarations }) => declarations).filter((one) => !sound.has(keyOf(one)));
  if (last.length === 0) return fresh;
  const told = new Set([...sound, ...last.map(keyOf)]);
  let isFirst = true;
  return fresh.map((fragment) => {
    if (!fragment.broken) return fragment;
    const own = fragment.declarations.filter((one) => !told.has(keyOf(one)));
    const declarations = isFirst ? [...last, ...own] : own;
    isFirst = false;
    return { ...fragment, declarations };
  });
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
