/** Preferred rated currents of fuse-links from 16 A up, A; IEC 60269-1, from memory. */
const preferred = [16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400] as const;

/** The largest preferred rating that is not above a current, A: nobody stocks a fuse-link of what a sum leaves. */
export function fuseAtMost(current: number): number | undefined {
  return preferred.findLast((rating) => rating <= current);
}
