/** Numbers that look random and are the same for the same seed (mulberry32, a well-known public-domain generator). */
export class Dice {
  constructor(private state: number) {}

  /** A whole number from 0 up to but without `below`. */
  below(below: number): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296) * below);
  }
  between(low: number, high: number): number {
    return low + this.below(high - low + 1);
  }
  /** True once in so many times. */
  once(inSoMany: number): boolean {
    return this.below(inSoMany) === 0;
  }
  pick<Thing>(things: readonly Thing[]): Thing {
    return things[this.below(things.length)]!;
  }
}
