/** Energises the drawing that is shown, or ends that. What it takes is fetched when it is first asked for. */
export async function toggleEnergise(): Promise<void> {
  const energising = await import("./energising.ts");
  energising.toggleEnergise();
}
