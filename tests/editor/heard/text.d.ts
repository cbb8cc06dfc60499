/** Texts that are bundled with the tests. */
declare module "*.txt" {
  const text: string;
  export default text;
}
