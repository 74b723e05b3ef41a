import { Drawing } from "./drawing.ts";

/** Two circuits of a panel, on different legs, each with a box of its own and one receptacle; B2 is reached from B1 by X. */
export function twoCircuits(edition: ConstructorParameters<typeof Drawing>[0] = 2020): Drawing {
  const drawing = new Drawing(edition)
    .room("Dining", ["dining"])
    .panel("P")
    .breaker("Q1", 20, { legs: ["A"] })
    .breaker("Q2", 20, { legs: ["B"] });
  for (const number of ["1", "2"])
    drawing
      .box(`B${number}`, 30, { roomId: "Dining" as never })
      .cable(`C${number}`, "nm-12-2-g", "P", `B${number}`)
      .device(`R${number}`, "receptacle-15", `B${number}`)
      .splice(`h${number}`, `B${number}`, "twist-medium")
      .splice(`n${number}`, `B${number}`, "twist-medium")
      .put({ [`C${number}.bk@P`]: `Q${number}.OUT`, [`C${number}.wh@P`]: "P-NB.BAR", [`C${number}.cu@P`]: "P-GB.BAR" })
      .put({ [`C${number}.bk@B${number}`]: `h${number}`, [`C${number}.wh@B${number}`]: `n${number}` })
      .put({ [`C${number}.cu@B${number}`]: `R${number}.G` })
      .jumper(`p${number}`, `B${number}`, `h${number}`, `R${number}.H1`)
      .jumper(`q${number}`, `B${number}`, `n${number}`, `R${number}.N1`, { colour: "white" });
  return drawing.cable("X", "nm-12-2-g", "B1", "B2");
}
