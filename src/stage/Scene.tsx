/**
 * The cars, the bench under them and the drawing of each into its own place on the page. Runs
 * inside fiber's root: one renderer, one camera, drawn only when something has changed.
 */
import { extend, useFrame, useThree } from '@react-three/fiber';
import { memo, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import {
  Mesh as Drawn,
  PlaneGeometry,
  type Scene as Scenery,
  type ShaderMaterial,
  Vector2,
  type WebGLRenderer,
} from 'three';
import type { Mesh } from '../car/mesh.ts';
import type { Pose } from './camera/pose.ts';
import { dispose, type Shaded, shadedOf } from './car/shaded.ts';
import { softboxRoom } from './light/room.ts';
import { bench } from './light/shade.ts';
import { benchMaterial, paintMaterial } from './shader/materials.ts';
import { type Rows, rowsFor, wear } from './surface/rows.ts';
import type { Surface } from './surface/surface.ts';
import { type Drawer, type DrawnCar, drawerFor } from './view/draw.ts';
import { lookAs, newEye } from './view/eye.ts';
import { smootherFor } from './view/smooth.ts';

extend({ Mesh: Drawn });

/** One alternative on the stage. */
export interface StagedCar {
  readonly id: string;
  /** What each part wears, in the order of the mesh's parts. */
  readonly worn: readonly Surface[];
}
/** Where a car stands on the page: CSS pixels from the canvas's upper left. */
export interface Stand {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
/** What is needed to draw the cars elsewhere too: into a picture, or to ask what is where. */
export interface Studio {
  readonly gl: WebGLRenderer;
  readonly scene: Scenery;
  readonly drawer: Drawer;
  readonly cars: ReadonlyMap<string, StudioCar>;
}
export interface StudioCar extends DrawnCar {
  readonly rows: Rows;
  readonly materials: readonly ShaderMaterial[];
}

export interface SceneProps {
  readonly mesh: Mesh;
  readonly cars: readonly StagedCar[];
  readonly stands: readonly Stand[];
  /** The one pose of the camera, fitted to a view of this aspect and height in CSS pixels. */
  readonly poseFor: (aspect: number, heightPx: number) => Pose;
  /** Size of the canvas, CSS pixels, and device pixels to one of them. */
  readonly width: number;
  readonly height: number;
  readonly fineness: number;
  /** Whether edges are smoothed; so unless told otherwise. */
  readonly isSmooth?: boolean;
  /** Called once the cars can be drawn. */
  readonly onStudio: (studio: Studio) => void;
  /** Called when the picture on screen has fallen behind. */
  readonly onDue?: () => void;
  /** Called after every drawing with how long ago the last one was, ms. */
  readonly onDrawn: (sinceLastMs: number) => void;
}

/** The cars side by side; drawn again only where a property has changed. */
export const Scene = memo(function Scene(props: SceneProps) {
  const { mesh, cars, stands, poseFor, width, height, fineness } = props;
  const { isSmooth = true, onStudio, onDue, onDrawn } = props;
  const { gl, scene, invalidate } = useThree();
  const shaded = useMemo(() => shadedOf(gl, mesh, softboxRoom), [gl, mesh]);
  useEffect(() => () => dispose(shaded), [shaded]);
  const known = useRef(new Map<string, StudioCar>());
  const drawer = useMemo(() => drawerFor(gl, () => known.current.values()), [gl]);
  useEffect(() => () => drawer.dispose(), [drawer]);
  const smoother = useMemo(() => smootherFor(gl), [gl]);
  useEffect(() => () => smoother.dispose(), [smoother]);
  useEffect(
    () => onStudio({ gl, scene, drawer, cars: known.current }),
    [gl, scene, drawer, onStudio],
  );

  // Whatever these are now, the next drawing shows them.
  useLayoutEffect(() => {
    onDue?.();
    invalidate();
  });
  // A canvas given back by the browser is empty.
  useEffect(() => {
    const again = (): void => invalidate();
    gl.domElement.addEventListener('webglcontextrestored', again);
    return () => gl.domElement.removeEventListener('webglcontextrestored', again);
  }, [gl, invalidate]);

  const eye = useMemo(newEye, []);
  const last = useRef(0);
  useFrame(() => {
    resize(gl, width, height, fineness);
    const ratio = gl.getPixelRatio();
    const canvasHeight = gl.domElement.height;
    gl.autoClear = false;
    gl.setScissorTest(false);
    gl.setClearAlpha(0);
    gl.clear();
    const drawAll = (): void => {
      for (const stand of stands) {
        const car = known.current.get(stand.id);
        if (car === undefined || stand.width < 1 || stand.height < 1) continue;
        const aspect = stand.width / stand.height;
        lookAs(eye, poseFor(aspect, stand.height), aspect);
        const width = Math.round(stand.width * ratio);
        const height = Math.round(stand.height * ratio);
        const x = Math.round(stand.x * ratio);
        const y = canvasHeight - Math.round(stand.y * ratio) - height;
        drawer.draw(scene, eye, car, { x, y, width, height });
      }
    };
    // The first picture comes as soon as it can; smooth edges follow at once.
    const isFirst = last.current === 0;
    if (isSmooth && !isFirst) smoother.smooth(drawAll);
    else drawAll();
    if (isSmooth && isFirst) invalidate();
    const now = performance.now();
    onDrawn(now - last.current);
    last.current = now;
  }, 1);

  return (
    <>
      <Bench shaded={shaded} />
      {cars.map(({ id, worn }) => (
        <Car key={id} id={id} worn={worn} shaded={shaded} known={known.current} />
      ))}
    </>
  );
});

/** A canvas loses its picture when its size is set, so that is done just before drawing. */
function resize(gl: WebGLRenderer, width: number, height: number, fineness: number): void {
  if (gl.getPixelRatio() !== fineness) gl.setPixelRatio(fineness);
  const { width: wide, height: tall } = gl.getSize(new Vector2());
  if (wide !== width || tall !== height) gl.setSize(width, height);
}

/** The shadow that the car throws on the bench. */
function Bench({ shaded }: { readonly shaded: Shaded }) {
  const geometry = useMemo(() => {
    const plane = new PlaneGeometry(2 * bench.halfAcross, 2 * bench.halfAlong);
    // Laid flat, so that texture rows run from −z to +z.
    return plane
      .scale(1, -1, 1)
      .rotateX(-Math.PI / 2)
      .translate(0, 0.001, 0);
  }, []);
  const material = useMemo(() => benchMaterial(shaded.bench), [shaded]);
  useEffect(() => () => material.dispose(), [material]);
  const ground = useRef<Drawn>(null);
  useLayoutEffect(() => {
    const mesh = ground.current;
    if (mesh === null) return;
    mesh.onBeforeRender = (renderer) => {
      renderer.getCurrentViewport(material.uniforms.uView!.value);
      material.uniformsNeedUpdate = true;
    };
  }, [material]);
  return <mesh ref={ground} geometry={geometry} material={material} renderOrder={-1} />;
}

interface CarProps extends StagedCar {
  readonly shaded: Shaded;
  readonly known: Map<string, StudioCar>;
}

/** One car; a change of finish writes rows, nothing else. */
function Car({ id, worn, shaded, known }: CarProps) {
  const body = useRef<Drawn>(null);
  const count = worn.length;
  const own = useMemo(() => {
    const rows = rowsFor(count);
    const materials = [paintMaterial({ rows }), paintMaterial({ rows, isGlass: true })];
    return { rows, materials };
  }, [count]);
  useEffect(
    () => () => {
      for (const done of [own.rows.texture, ...own.materials]) done.dispose();
    },
    [own],
  );
  useLayoutEffect(() => {
    const mesh = body.current;
    if (mesh === null) return;
    mesh.visible = false;
    known.set(id, { body: mesh, ...own });
    return () => {
      known.delete(id);
    };
  }, [id, own, known]);
  useLayoutEffect(() => {
    for (const [part, surface] of worn.entries()) wear(own.rows, part, surface);
  }, [own, worn]);
  return (
    <mesh
      ref={body}
      geometry={shaded.shape.geometry}
      material={own.materials}
      frustumCulled={false}
    />
  );
}
