import cyrillic from "@fontsource/arimo/files/arimo-cyrillic-400-normal.woff";
import cyrillicBold from "@fontsource/arimo/files/arimo-cyrillic-700-normal.woff";
import greek from "@fontsource/arimo/files/arimo-greek-400-normal.woff";
import greekBold from "@fontsource/arimo/files/arimo-greek-700-normal.woff";
import latin from "@fontsource/arimo/files/arimo-latin-400-normal.woff";
import latinBold from "@fontsource/arimo/files/arimo-latin-700-normal.woff";
import latinMore from "@fontsource/arimo/files/arimo-latin-ext-400-normal.woff";
import latinMoreBold from "@fontsource/arimo/files/arimo-latin-ext-700-normal.woff";

/** The faces that texts are set in; each file holds some alphabets only. They are part of the program. */
export interface Face {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** In the order in which they are asked for a letter. */
export function faces(isBold: boolean): Face[] {
  return isBold
    ? [
        { name: "latin-700", bytes: latinBold },
        { name: "latin-ext-700", bytes: latinMoreBold },
        { name: "greek-700", bytes: greekBold },
        { name: "cyrillic-700", bytes: cyrillicBold },
      ]
    : [
        { name: "latin-400", bytes: latin },
        { name: "latin-ext-400", bytes: latinMore },
        { name: "greek-400", bytes: greek },
        { name: "cyrillic-400", bytes: cyrillic },
      ];
}

/** For signs that no face has. */
export const plainly: Readonly<Record<string, string>> = { "→": "to", "≤": "<=", "≥": ">=", "−": "–", "∞": "oo" };
