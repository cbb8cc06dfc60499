/** Stands in for what unpacks woff2, which no face of ours is: most of it is a dictionary. */
export default function unpack(): never {
  throw new Error("Faces are read as woff, not as woff2");
}
