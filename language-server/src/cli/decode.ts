/** What is wrong with bytes that should be a design: the end of a sentence that begins with the file's name. */
export class NotText extends Error {}

/** Text of a `.sun` file without its byte order mark. Throws `NotText` for anything but UTF-8. */
export function decode(bytes: Uint8Array): string {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    throw new NotText("is written in UTF-16. Save it as UTF-8.");
  const zero = bytes.indexOf(0);
  if (zero >= 0) throw new NotText(`is no text: its byte ${zero + 1} is zero. A design is UTF-8 text.`);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new NotText("is not written in UTF-8. Save it as UTF-8, or look whether it is a design at all.");
  }
}
