import { homedir } from "node:os";
import { join } from "node:path";

/** Where large hosts are kept between runs, outside the checkout. */
export const cache = process.env.SUNWRIGHT_HOSTS || join(homedir(), ".cache", "sunwright-hosts");
