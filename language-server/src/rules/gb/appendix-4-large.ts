import type { SizeTable } from "../../physics/ampacity.js";
import { sized } from "./sizes.js";

/**
 * BS 7671 Appendix 4, current-carrying capacity of single-core copper cables above 35 mm², A: tails and battery leads.
 * Table 4D1A from memory; Table 4E1A as read in print. Letters are reference methods; Two and Three are loaded
 * conductors.
 */
export const largeSizes = [50, 70, 95] as const;

const rows = (figures: readonly number[]): SizeTable => sized(largeSizes, figures);

export const large4D1A = {
  ATwo: rows([119, 151, 182]),
  AThree: rows([108, 136, 164]),
  BTwo: rows([151, 192, 232]),
  BThree: rows([134, 171, 207]),
  CTwo: rows([182, 234, 284]),
  CThree: rows([167, 214, 261]),
};

export const large4E1A = {
  ATwo: rows([158, 200, 241]),
  AThree: rows([141, 179, 216]),
  BTwo: rows([198, 253, 306]),
  BThree: rows([175, 222, 269]),
  CTwo: rows([228, 293, 355]),
  CThree: rows([209, 268, 326]),
};
