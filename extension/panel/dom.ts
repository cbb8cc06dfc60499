type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

/** An element with attributes and what it holds; an attribute that is false or undefined is left out. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...inside: readonly (Node | string)[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes))
    if (value !== undefined && value !== false) made.setAttribute(name, value === true ? "" : String(value));
  made.append(...inside);
  return made;
}

export function button(label: string, attributes: Attributes, press: () => void): HTMLButtonElement {
  const made = element("button", { type: "button", ...attributes }, label);
  made.addEventListener("click", press);
  return made;
}

/** What is printed on a button of a picture is said by its name; it would be read a second time. */
export function hush(svg: SVGSVGElement): void {
  for (const text of svg.querySelectorAll("[role='button'] text")) text.setAttribute("aria-hidden", "true");
}
