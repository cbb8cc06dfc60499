/** A fault of the program itself, for its log. */
export function faultText(fault: unknown): string {
  return fault instanceof Error ? (fault.stack ?? fault.message) : String(fault);
}
