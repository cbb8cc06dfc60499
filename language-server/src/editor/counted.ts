/** So many of something, in words that can be translated; nothing where there are none. */
export function counted(count: number, one: string, several: (count: number) => string): string {
  if (count === 0) return "";
  return count === 1 ? one : several(count);
}
