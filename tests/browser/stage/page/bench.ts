/**
 * What checks may ask of the test studio's page. Everything crosses as plain JSON; pictures are
 * RGBA bytes, top row first, in base64. Surfaces are worked out by whoever asks, so that the page
 * holds nothing but the stage itself.
 */
import type { Pose } from '../../../../src/stage/camera/pose.ts';
import type { StagedCar } from '../../../../src/stage/Scene.tsx';
import type { Surface } from '../../../../src/stage/surface/surface.ts';

export interface Lighting {
  readonly room: 'even' | 'softbox';
  /** 0 leaves the mirror at the surface out, 1 is the product's own. */
  readonly mirror: 0 | 1;
  /** The product's knee unless given; 1 lets nothing roll off. */
  readonly knee?: number;
  /** Every light so many times as strong. */
  readonly strength?: number;
}

export interface Sent {
  readonly width: number;
  readonly height: number;
  /** Base64. */
  readonly bytes: string;
}

/** What the graphics card was asked for since the last count, heard at the WebGL interface itself. */
export interface Counts {
  readonly draws: number;
  readonly compiled: number;
  readonly linked: number;
  /** Bytes of vertices and indices handed over. */
  readonly geometryBytes: number;
  readonly textureBytes: number;
  /** What three says it holds. */
  readonly geometries: number;
  readonly programs: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Bench {
  /** A sphere in each surface, seen from ahead; the sphere fills the picture's height. */
  spheres(surfaces: readonly Surface[], lighting: Lighting, sidePx: number): Sent[];
  /** Cars on stages of their own: each list in one context. Milliseconds to their full frame. */
  stand(stages: readonly (readonly StagedCar[])[], pose: Pose, size: Size): Promise<number>;
  /** Other finishes on the first stage; settles once they are drawn. */
  dress(cars: readonly StagedCar[]): Promise<void>;
  /** Takes all stages away. */
  clear(): void;
  picture(id: string, pose: Pose, size: Size): Sent;
  /** One byte a pixel: part + 1, 0 where there is none. */
  parts(id: string, pose: Pose, size: Size): Sent;
  /** Draws the car into the canvas once. */
  drawOnce(id: string, pose: Pose, size: Size): void;
  /** Median milliseconds a frame with the first so many cars in it, read back to be sure. */
  frameMs(pose: Pose, size: Size, cars: number, frames: number): number;
  counts(): Counts;
  /** Takes the first stage's context away and gives it back; settles once it has drawn again. */
  loseAndRestore(): Promise<void>;
  /** Codes of errors that WebGL has met on any stage. */
  errors(): number[];
}

declare global {
  interface Window {
    readonly bench: Bench;
  }
}
