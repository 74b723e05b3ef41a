/** The part of pdfkit that `paper.ts` uses; the package has no types of its own. */
declare module "pdfkit" {
  interface TextOptions {
    readonly lineBreak: false;
    readonly baseline: "alphabetic";
    readonly features: readonly string[] | Readonly<Record<string, boolean>>;
    readonly characterSpacing: number;
  }
  interface Outline {
    addItem(title: string): Outline;
  }
  export default class PDFDocument {
    constructor(options: {
      readonly font: null;
      readonly autoFirstPage: false;
      readonly compress: boolean;
      readonly pdfVersion: "1.7";
      readonly lang: string;
      readonly displayTitle: boolean;
      readonly info: Readonly<Record<string, string | Date>>;
    });
    readonly outline: Outline;
    on(event: "data", take: (bytes: Uint8Array) => void): this;
    on(event: "end", done: () => void): this;
    on(event: "error", fail: (error: unknown) => void): this;
    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): this;
    registerFont(name: string, bytes: Uint8Array): this;
    font(name: string): this;
    fontSize(points: number): this;
    widthOfString(text: string, options: Partial<TextOptions>): number;
    text(text: string, x: number, y: number, options: TextOptions): this;
    save(): this;
    restore(): this;
    translate(x: number, y: number): this;
    scale(factor: number): this;
    rotate(degrees: number, options: { readonly origin: readonly [number, number] }): this;
    path(d: string): this;
    rect(x: number, y: number, width: number, height: number): this;
    roundedRect(x: number, y: number, width: number, height: number, radius: number): this;
    clip(rule?: "even-odd"): this;
    lineWidth(width: number): this;
    lineCap(cap: "butt" | "round"): this;
    lineJoin(join: "miter" | "round"): this;
    dash(length: readonly number[], options: { readonly phase: number }): this;
    undash(): this;
    fillColor(colour: string): this;
    strokeColor(colour: string): this;
    fill(rule?: "even-odd"): this;
    stroke(): this;
    fillAndStroke(rule?: "even-odd"): this;
    end(): void;
  }
}
