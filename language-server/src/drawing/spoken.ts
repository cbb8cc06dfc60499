import type { Mark } from "./diagram.js";
import type { Shape } from "./picture.js";

const phases: Readonly<Record<string, string>> = { "1": "single-phase", "3": "three-phase" };

/** A printed line in words for whoever hears it: what a sign means is seen, but not read out. */
export function spokenLine(line: string): string {
  return line
    .replace(/^(\S+°) \/ (\S+°)$/, "tilt $1, azimuth $2")
    .replace(/(^| )(\d)~(?= |$)/, (_, before: string, count: string) => `${before}${phases[count] ?? `${count}-phase`}`)
    .replace(/ (\d)P(\+N)?$/, (_, poles: string, neutral) => ` ${poles}-pole${neutral ? " and neutral" : ""}`)
    .replace(/(\d)\.\.(?=\d)/, "$1 to ")
    .replaceAll(" · ", ", ");
}

/** Says of each thing which findings are about it, as the badges beside it show. */
export function withMarksSaid(shapes: readonly Shape[], marks: readonly Mark[]): Shape[] {
  return shapes.map((shape): Shape => {
    if (shape.is !== "group") return shape;
    const { id, label } = shape;
    const own = marks.filter(({ at }) => id !== undefined && at === id);
    const said = own.map(({ departed, severity, number }) => `${departed ? "departure" : severity} ${number}`);
    return {
      ...shape,
      shapes: withMarksSaid(shape.shapes, marks),
      ...(label !== undefined && { label: [label, ...said].join(", ") }),
    };
  });
}
