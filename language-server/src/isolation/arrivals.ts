import type { Terminal } from "../circuit/circuit.js";
import type { Arrival, LiveTrace } from "../circuit/live.js";
import { arrivalText } from "../circuit/live-text.js";
import type { Mode } from "../circuit/modes.js";
import type { Item } from "../design/things.js";
import { formatFigure } from "../physics/working.js";
import { stringColdVoltage } from "../rules/array-figures.js";
import { type Judge, NotKnown } from "../rules/judge.js";
import type { LiveArrival } from "./report.js";
import { whenText } from "./when.js";

interface Gathered {
  readonly arrival: Arrival;
  readonly modes: Mode[];
  mayReturn?: true;
}

/**
 * Arrivals of several modes put together: each source by each way once, with the modes in which it is there. Terminals
 * that conductors join share theirs, so they are put together once a piece of wiring and not once a terminal.
 */
export class LiveArrivals {
  private readonly traces: { readonly mode: Mode; readonly trace: LiveTrace }[] = [];
  private readonly numbers = new Map<Arrival, number>();
  private readonly written = new Map<string, { readonly list: readonly LiveArrival[]; readonly key: string }>();
  private readonly voltages = new Map<Item, string | undefined>();

  constructor(
    private readonly asked: readonly Mode[],
    private readonly judge: Judge,
  ) {}

  add(mode: Mode, trace: LiveTrace): void {
    this.traces.push({ mode, trace });
  }

  at(terminal: Terminal): readonly LiveArrival[] {
    return this.of(terminal).list;
  }

  /** Equal for terminals that the same sources reach in the same way. */
  keyAt(terminal: Terminal): string {
    return this.of(terminal).key;
  }

  private of(terminal: Terminal): { readonly list: readonly LiveArrival[]; readonly key: string } {
    const traced = this.traces.map(({ mode, trace }) => ({ mode, arrivals: trace.arrivals.get(terminal) ?? [] }));
    const identity = traced.map(({ arrivals }) => this.identity(arrivals)).join(";");
    let found = this.written.get(identity);
    if (!found) {
      const list = withoutReturns(gathered(traced)).map((each) => this.write(each));
      found = { list, key: list.map(({ text }) => text).join("\n") };
      this.written.set(identity, found);
    }
    return found;
  }

  /** What feeds a piece of wiring is told by its first arrival; what capacitors hold comes last, terminal by terminal. */
  private identity(arrivals: readonly Arrival[]): string {
    const telling = arrivals.slice(0, 1);
    for (let last = arrivals.length - 1; arrivals[last]?.through === "stored"; last--) telling.push(arrivals[last]!);
    return telling.map((arrival) => this.numberOf(arrival)).join(",");
  }

  private numberOf(arrival: Arrival): number {
    let number = this.numbers.get(arrival);
    if (number === undefined) {
      number = this.numbers.size;
      this.numbers.set(arrival, number);
    }
    return number;
  }

  private write({ arrival, modes, mayReturn }: Gathered): LiveArrival {
    const { source, through, inverters, untilDisconnects, wait } = arrival;
    // Behind an inverter it is the inverter that decides how high the voltage is.
    const upTo = source.kind === "pv" && through === "conductor" ? this.highest(source.item) : undefined;
    const returns = mayReturn ?? arrival.mayReturn;
    const details = [
      upTo === undefined ? "" : `up to ${upTo}`,
      // That a string feeds by day only is in its own words.
      whenText(modes, source.kind === "pv" ? this.byDay : this.asked),
      mayReturn ? "in an island it is dead and may return at any time" : "",
    ].filter(Boolean);
    return {
      source: source.item.id,
      kind: source.kind,
      through,
      inverters: inverters.map(({ id }) => id),
      ...(untilDisconnects && { untilDisconnects: untilDisconnects.id }),
      ...(returns && { mayReturn: true }),
      ...(wait && { wait: formatFigure(wait) }),
      ...(upTo !== undefined && { upTo }),
      modes,
      text: arrivalText(arrival) + (details.length > 0 ? ` (${details.join("; ")})` : ""),
    };
  }

  private get byDay(): readonly Mode[] {
    return this.asked.filter(({ light }) => light === "day");
  }

  /** The highest open-circuit voltage of a string; undefined where a fact is missing. */
  private highest(string: Item): string | undefined {
    if (!this.voltages.has(string)) this.voltages.set(string, coldVoltage(string, this.judge));
    return this.voltages.get(string);
  }
}

function gathered(traced: readonly { readonly mode: Mode; readonly arrivals: readonly Arrival[] }[]): Gathered[] {
  const found = new Map<string, Gathered>();
  for (const { mode, arrivals } of traced) {
    for (const arrival of arrivals) {
      const key = keyOf(arrival);
      const known = found.get(key);
      if (known) known.modes.push(mode);
      else found.set(key, { arrival, modes: [mode] });
    }
  }
  return [...found.values()];
}

function coldVoltage(string: Item, judge: Judge): string | undefined {
  if (string.kind !== "string") return undefined;
  try {
    return formatFigure(stringColdVoltage(string, judge));
  } catch (error) {
    if (error instanceof NotKnown) return undefined;
    throw error;
  }
}

function keyOf({ source, through, inverters, untilDisconnects, mayReturn }: Arrival): string {
  return [source.id, through, ...inverters.map(({ id }) => id), untilDisconnects?.id, mayReturn].join(" ");
}

/** Where the supply feeds in one mode, that it may return in the other is said beside it and not once more. */
function withoutReturns(all: readonly Gathered[]): Gathered[] {
  const returning = all.find(({ arrival }) => arrival.mayReturn);
  if (!returning) return [...all];
  const { source } = returning.arrival;
  const feeding = all.find(
    ({ arrival }) => arrival.source === source && arrival.through === "conductor" && !arrival.mayReturn,
  );
  if (!feeding) return [...all];
  return all.flatMap((each) => (each === returning ? [] : each === feeding ? [{ ...each, mayReturn: true }] : [each]));
}
