/**
 * The back of a test spoon's bowl: a flat dome over an egg-shaped outline, blunt toward the neck.
 * Out: geometry in metres, lying in x and y with its back toward +z, 58 wide and 38 high in
 * thousandths, as the drawn bowl of the page is in its own units.
 */
import { BufferAttribute, BufferGeometry } from 'three';

const rings = 28;
const spokes = 96;
const halfWidth = 0.029;
const halfHeight = 0.019;
const depth = 0.0105;

/** Point of the outline at a turn of 0–2π, and how far up the dome at a share 0–1 of the way out. */
const outline = (turn: number): readonly [number, number] => {
  const egg = 1 - 0.05 * Math.cos(turn) ** 2 * Math.sign(Math.cos(turn));
  return [halfWidth * Math.cos(turn), halfHeight * egg * Math.sin(turn)];
};
const heightAt = (share: number): number => depth * Math.sqrt(Math.max(0, 1 - share ** 2.3));

/** The bowl, every corner of part 0 and in full light. */
export function bowlGeometry(): BufferGeometry {
  const places: number[] = [];
  const indices: number[] = [];
  for (let ring = 0; ring <= rings; ring++) {
    // Rings crowd toward the rim, where the dome turns down.
    const share = Math.sin(((ring / rings) * Math.PI) / 2);
    for (let spoke = 0; spoke < spokes; spoke++) {
      const [x, y] = outline((spoke / spokes) * 2 * Math.PI);
      places.push(x * share, y * share, heightAt(share));
      if (ring === rings) continue;
      const next = (spoke + 1) % spokes;
      const [a, b] = [ring * spokes + spoke, ring * spokes + next];
      const [c, d] = [a + spokes, b + spokes];
      indices.push(a, c, d, a, d, b);
    }
  }
  const count = places.length / 3;
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(places), 3));
  geometry.setIndex(indices);
  geometry.computeVertexNormals();
  geometry.setAttribute('part', new BufferAttribute(new Float32Array(count), 1));
  geometry.setAttribute('shade', new BufferAttribute(new Uint8Array(count).fill(255), 1, true));
  return geometry;
}
