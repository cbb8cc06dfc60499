/** Whoever bundles this room puts the file's bytes in its place. */
declare module "*.woff" {
  const bytes: Uint8Array;
  export default bytes;
}
