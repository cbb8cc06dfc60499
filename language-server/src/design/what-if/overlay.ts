import type { Place } from "../../place.js";
import { stemsFrom } from "../as-written.js";
import { buildDesign, type SourceFile } from "../design.js";
import { type Changeable, findTarget, type Target } from "../find-thing.js";
import type { Declaration, Fragment } from "../model.js";
import { changeOf } from "./change.js";
import { type Hypothesis, hypothesisText } from "./hypothesis.js";
import { Unreadable } from "./read-value.js";

/** Something that holds in a design only because somebody supposes it. */
export interface Supposition {
  readonly target: string;
  readonly property: string;
  /** What is supposed, for people. */
  readonly value: string;
  /** What the text says. */
  readonly written?: string;
  /** What is assumed where it says nothing. Neither: nothing is known. */
  readonly assumed?: string;
  readonly place: Place;
}

/** A hypothesis that a design has no place for. */
export interface Refusal {
  readonly hypothesis: Hypothesis;
  /** `no-target`: this design has nothing of that name; another may have. */
  readonly because: "no-target" | "no-sense";
  readonly message: string;
}

export interface Overlaid {
  readonly files: readonly SourceFile[];
  readonly suppositions: readonly Supposition[];
  readonly refusals: readonly Refusal[];
}

/**
 * Hypotheses laid over the text of a design: what would be if it said so. Nothing is written; declarations without a
 * hypothesis stay the same objects, and those with one stay the same from one call to the next while their text does.
 */
export class Overlay {
  private readonly layers: readonly Layer[];

  constructor(readonly hypotheses: readonly Hypothesis[]) {
    this.layers = hypotheses.map((hypothesis) => new Layer(hypothesis));
  }

  /** Lays the hypotheses over the files of one design, one after the other; a refused one changes nothing. */
  over(files: readonly SourceFile[]): Overlaid {
    const suppositions: Supposition[] = [];
    const refusals: Refusal[] = [];
    let laid = files;
    for (const layer of this.layers) {
      const result = layer.over(laid);
      if ("because" in result) refusals.push(result);
      else {
        laid = result.files;
        suppositions.push(result.supposition);
      }
    }
    return { files: laid, suppositions, refusals };
  }
}

interface Laid {
  readonly files: readonly SourceFile[];
  readonly supposition: Supposition;
}

interface Known {
  readonly chain: Target["chain"];
  readonly top: Changeable;
}

/** One hypothesis, with what it last made of each declaration. */
class Layer {
  private readonly tops = new WeakMap<Changeable, Known>();
  private readonly fragments = new WeakMap<Fragment, Fragment>();

  constructor(private readonly hypothesis: Hypothesis) {}

  over(files: readonly SourceFile[]): Laid | Refusal {
    const design = buildDesign(files);
    const target = findTarget(design, this.hypothesis.target);
    if (typeof target === "string") return this.refusal("no-target", target);
    const { property } = this.hypothesis;
    try {
      const { declaration, ...change } = changeOf(this.hypothesis, target);
      const supposed = this.supposed(target, declaration);
      const laid = files.map((file) => this.fileWith(file, target.chain[0]!, supposed));
      const before = new Set(design.problems.map(({ message }) => message));
      const wrong = buildDesign(laid).problems.find(
        ({ severity, message }) => severity === "error" && !before.has(message),
      );
      if (wrong) return this.refusal("no-sense", wrong.message);
      return { files: laid, supposition: { target: target.id, property, ...change } };
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      return this.refusal("no-sense", error.message);
    }
  }

  private refusal(because: Refusal["because"], why: string): Refusal {
    const { hypothesis } = this;
    return { hypothesis, because, message: `${hypothesisText(hypothesis)}: ${why}` };
  }

  /** One hypothesis makes the same of the same declarations: they are made once. */
  private supposed({ chain }: Target, innermost: Changeable): Changeable {
    const [top] = chain;
    const known = this.tops.get(top!);
    if (known && sameElements(known.chain, chain)) return known.top;
    const made = rebuilt(chain, innermost);
    this.tops.set(top!, { chain, top: made });
    return made;
  }

  private fileWith(file: SourceFile, top: Changeable, supposed: Changeable): SourceFile {
    const fragments = file.fragments.map((fragment) =>
      fragment.declarations.includes(top) ? this.fragmentWith(fragment, top, supposed) : fragment,
    );
    return { uri: file.uri, fragments };
  }

  private fragmentWith(fragment: Fragment, top: Changeable, supposed: Changeable): Fragment {
    const known = this.fragments.get(fragment);
    if (known?.declarations.includes(supposed)) return known;
    const replace = (declaration: Declaration): Declaration => (declaration === top ? supposed : declaration);
    const made = { ...fragment, declarations: fragment.declarations.map(replace) };
    this.fragments.set(fragment, made);
    return made;
  }
}

/** The outermost declaration with the innermost exchanged; what a part brings is laid over it in the item's own braces. */
function rebuilt(chain: Target["chain"], innermost: Changeable): Changeable {
  let original = chain[chain.length - 1]!;
  let supposed = innermost;
  stemsFrom(supposed, original);
  for (let index = chain.length - 2; index >= 0; index--) {
    const outer = chain[index]!;
    const [before, after] = [original, supposed];
    if (before.declares !== "item" || after.declares !== "item") break;
    const nested = outer.nested.includes(before)
      ? outer.nested.map((each) => (each === before ? after : each))
      : [...outer.nested, after];
    original = outer;
    supposed = { ...outer, nested };
    stemsFrom(supposed, outer);
  }
  return supposed;
}

function sameElements(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((element, index) => element === b[index]);
}
