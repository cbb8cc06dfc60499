/** A figure in a few signs, and what it means for whoever stops at it. */
export interface HintText {
  readonly label: string;
  readonly tooltip: string;
}
