/**
 * Kinds of measured value that must not be mixed. A brand exists only for the compiler; at run
 * time the value is the plain number, tuple or array underneath.
 */
declare const kind: unique symbol;

/** A value of shape `T` that only counts as `Name` once a function of the owning room made it. */
export type Branded<T, Name extends string> = T & { readonly [kind]: Name };

/** CIELAB [L* 0–100, a*, b*]; D65 white, CIE 1931 2° observer, unless its maker says otherwise. */
export type Lab = Branded<readonly [lightness: number, a: number, b: number], 'Lab'>;

/** CIE XYZ under a stated light, scaled so that a perfect white has Y = 1. */
export type Xyz = Branded<readonly [x: number, y: number, z: number], 'Xyz'>;

/** Linear-light sRGB, 0–1 inside the gamut; values outside are kept, never silently clipped. */
export type LinearRgb = Branded<readonly [red: number, green: number, blue: number], 'LinearRgb'>;

/** Reflectance factor 0–1 on the internal grid: 380–780 nm at 10 nm, 41 bands. */
export type Reflectance = Branded<Float64Array, 'Reflectance'>;

export const asLab = (lightness: number, a: number, b: number): Lab =>
  [lightness, a, b] as unknown as Lab;
export const asXyz = (x: number, y: number, z: number): Xyz => [x, y, z] as unknown as Xyz;
export const asLinearRgb = (red: number, green: number, blue: number): LinearRgb =>
  [red, green, blue] as unknown as LinearRgb;
export const asReflectance = (bands: Float64Array): Reflectance => bands as unknown as Reflectance;
