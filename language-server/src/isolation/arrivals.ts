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

/** Arrivals of several modes put together: each source by each way once, with the modes in which it is there. */
export class LiveArrivals {
  private readonly byTerminal = new Map<Terminal, Map<string, Gathered>>();
  private readonly voltages = new Map<Item, string | undefined>();
  private readonly written = new Map<Terminal, readonly LiveArrival[]>();

  constructor(
    private readonly asked: readonly Mode[],
    private readonly judge: Judge,
  ) {}

  add(mode: Mode, { arrivals }: LiveTrace): void {
    for (const [terminal, all] of arrivals) {
      let own = this.byTerminal.get(terminal);
      if (!own) {
        own = new Map();
        this.byTerminal.set(terminal, own);
      }
      for (const arrival of all) {
        const key = keyOf(arrival);
        const known = own.get(key);
        if (known) known.modes.push(mode);
        else own.set(key, { arrival, modes: [mode] });
      }
    }
  }

  at(terminal: Terminal): readonly LiveArrival[] {
    let list = this.written.get(terminal);
    if (!list) {
      const own = [...(this.byTerminal.get(terminal)?.values() ?? [])];
      list = withoutReturns(own).map((each) => this.write(each));
      this.written.set(terminal, list);
    }
    return list;
  }

  /** Equal for terminals that the same sources reach in the same way. */
  keyAt(terminal: Terminal): string {
    return this.at(terminal)
      .map(({ text }) => text)
      .join("\n");
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
