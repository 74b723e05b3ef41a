/** The text of a file, taken into the program when it is built. */
declare module "*?raw" {
  const text: string;
  export default text;
}
