/** A file as an address that holds it, taken into the program when it is built. */
declare module "*.woff?inline" {
  const address: string;
  export default address;
}
