import type { WhatIf } from "../../assessment/assessment.js";
import { suppositionText } from "../../assessment/what-if-text.js";
import type { WhatIfReport } from "./report.js";

/** What was supposed of a design, and whose outcome it changes. */
export function whatIfReport({ suppositions, changes }: WhatIf): WhatIfReport {
  return {
    suppositions: suppositions.map((supposition) => {
      const { target, property, value, written, assumed } = supposition;
      return { target, property, value, written, assumed, text: suppositionText(supposition) };
    }),
    changes,
  };
}
