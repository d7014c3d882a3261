/**
 * The finishes of one car as a texture: a row a part, read by the shader of the whole car. Painting
 * a part anew writes one row; no geometry is rebuilt and no shader compiled.
 *
 * Layout, RGBA float: face + roughness, body + sparkle, flop + flake size, mirror + opacity,
 * dye + bloom, grain kind + grain size.
 */
import { DataTexture, FloatType, NearestFilter, RGBAFormat } from 'three';
import { grains, type Surface } from './surface.ts';

/** Texels a row. */
const width = 6;
const stride = width * 4;

export interface Rows {
  readonly texture: DataTexture;
}

/** Rows for `count` parts, black until written. */
export function rowsFor(count: number): Rows {
  const texture = new DataTexture(
    new Float32Array(stride * count),
    width,
    count,
    RGBAFormat,
    FloatType,
  );
  texture.minFilter = NearestFilter;
  texture.magFilter = NearestFilter;
  texture.needsUpdate = true;
  return { texture };
}

/** Writes the surface of a part. */
export function wear({ texture }: Rows, part: number, surface: Surface): void {
  const { face, body, flop, mirror, dye, roughness, sparkle, flakeM } = surface;
  const { bloom, grain, grainM, opacity } = surface;
  const row = [
    ...[...face, roughness],
    ...[...body, sparkle],
    ...[...flop, flakeM],
    ...[...mirror, opacity],
    ...[...dye, bloom],
    ...[grains.indexOf(grain), grainM],
  ];
  (texture.image.data as Float32Array).set(row, part * stride);
  texture.needsUpdate = true;
}
