/** Branded physical quantities. A bare `number` is a count or an index; everything measured carries its unit. */
export type Amps = number & { readonly __unit: "A" };
export type Milliamps = number & { readonly __unit: "mA" };
export type Volts = number & { readonly __unit: "V" };
export type Ohms = number & { readonly __unit: "ohm" };
export type Watts = number & { readonly __unit: "W" };
export type Feet = number & { readonly __unit: "ft" };
export type Inches = number & { readonly __unit: "in" };
export type Celsius = number & { readonly __unit: "degC" };

export const amps = (value: number): Amps => value as Amps;
export const milliamps = (value: number): Milliamps => value as Milliamps;
export const volts = (value: number): Volts => value as Volts;
export const ohms = (value: number): Ohms => value as Ohms;
export const watts = (value: number): Watts => value as Watts;
export const feet = (value: number): Feet => value as Feet;
export const inches = (value: number): Inches => value as Inches;
export const celsius = (value: number): Celsius => value as Celsius;
